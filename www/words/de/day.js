// The test day, and what it teaches.

import { fields } from "./plan.js";

// The test day.
export const testDay = {
  intro: "Baut und fahrt einen Sprung nach dem anderen, vom ersten an. Zuerst fährt ein Erwachsener.",
  flag: (name, speed) => `${name}: An der Fahne bei der Absprungkante müsst ihr ${speed} messen.`,
  first: (gap, how) => `Stellt den Absprung für die ersten Versuche näher, Lücke ${gap}: Dann reicht auch eine langsame Fahrt bis zur Landung (eine normale: ${how}).`,
  measure: (tightest) => `Miss erst nach, was gegraben ist. Am engsten: ${tightest}.`,
  alone: (speed) => `Allein gefahren, bevor die anderen stehen, klappt er genauso (${speed}).`,
  notAlone: (speed, how) => `Nicht allein fahren: Ohne die Sprünge davor ist das Tempo hier ${speed}: ${how}.`,
  wind: (head, tail) =>
    head && tail
      ? `Hört auf, wenn Wind entlang der Line weht: ${head} von vorn oder ${tail} von hinten verderben schon einen Sprung.`
      : head
        ? `Hört auf bei einem Wind von ${head} von vorn.`
        : tail
          ? `Hört auf bei einem Wind von ${tail} von hinten.`
          : "Wind entlang der Line verdirbt hier bis zur frischen Brise keinen Sprung. Böen von der Seite sind etwas anderes.",
  damp: "Schon feuchter Boden verdirbt einen Sprung: Wartet, bis er trocken ist.",
  soft: "Weicher Boden: Für heute ist Schluss, egal, was die Zahlen sagen.",
  noStop: (speed, missing) => `Das fährt noch niemand: Der Fahrer verlässt das Ende mit ${speed}${missing ? `, dem Auslauf fehlen ${missing}` : ""}.`,
  unfit: "Ein Sprung, der auf dem Papier nicht sauber ist, wird nicht gefahren. Ändert ihn zuerst.",
};

export const seen = {
  intro: "Jemand ist die Line gefahren, so wie sie hier geplant ist? Trag ein, was du mit Stoppuhr, Fahnen und Maßband gesehen hast. Die Seite findet heraus, wie dein Boden rollt und wie stark der Schubs war.",
  places: "Orte zählen waagerecht entlang der Line, von ihrem Anfang bis zur Mitte des Rads.",
  what: "Was hast du gesehen?",
  kinds: { time: "Zeit zwischen Fahnen", speed: "Tempo an einem Ort", landed: "Wo die Räder aufkamen", stopped: "Wo es stehen blieb" },
  how: {
    time: "Von einer Fahne zur anderen, mit Stoppuhr oder Film. Die erste darf auch der Start sein: Ort 0.",
    speed: "Mit Film oder mit einem Tacho.",
    landed: "Die Spur des Hinterrads, waagerecht gemessen von der Landekante, dem höchsten Punkt der Landung. Mit einem Minus, wenn es zu kurz war. Kommt das Vorderrad zuerst auf, beginnt die Spur etwas hinter dem, was in der Tabelle der Sprünge steht.",
    stopped: "Wo das Rad an einer Steigung zurückrollte oder ausrollte. Nur ohne Bremsen.",
  },
  fields: {
    from: "Erste Fahne",
    to: "Zweite Fahne",
    seconds: "Zeit dazwischen",
    at: "Ort",
    speed: "Tempo dort",
    jump: "Sprung",
    past_knuckle: "Hinter der Landekante",
    stopped: "Blieb stehen bei",
    give_or_take: "Mehr oder weniger",
  },
  on: (name) => `Auf: ${name}`,
  planned: (value) => `Die geplante Fahrt: ${value}`,
  add: "Eintragen",
  full: "Mehr kann die Seite nicht abwägen. Nimm etwas heraus, bevor du mehr einträgst.",
  named: {
    time: (from, to) => `die Zeit von ${from} bis ${to}`,
    speed: (at) => `das Tempo bei ${at}`,
    landed: (jump) => `die Landung bei ${jump}`,
    stopped: (at) => `der Halt bei ${at}`,
  },
  valued: (name, value) => `${name} (${value})`,
  first: "Erst wenn das stimmt, lernt die Seite daraus.",
  beside: (planned, found) => `Geplante Fahrt: ${planned}. Fahrt, die am besten passt: ${found}.`,
  never: "kommt nie hin",
  scatter: (by) => `Fahrten, die fast gleich sind, liegen hier ${by} auseinander: Das verrät wenig.`,
  other: (label) => `Gefahren von: ${label}. Wähle unter „${fields.label}“ ${label}, dann siehst du, was das verrät.`,
  unused: {
    off_the_line: "Zählt nicht: So einen Ort gibt es auf dieser Line nicht.",
    braking: "Zählt nicht: Hier wird gebremst, und niemand weiß, wie stark.",
    never_there: "Zählt nicht: Die Fahrt kommt nie dorthin.",
  },
  doubted: "Das passt nicht zu den anderen.",
  far: "Das liegt weit daneben.",
  working: "Sucht, was passt. Das dauert ein paar Sekunden.",
  nothing: "Daraus lässt sich hier nichts lernen.",
  lost: "Was das lehrt, ließ sich hier nicht ausrechnen. Lade die Seite neu, wo es Empfang gibt.",
  input: {
    rolling: (value, _, low, high, sure) =>
      sure ? `Dein Boden rollt etwa ${value}-mal so schwer wie geplant (${low} bis ${high}).` : `wie dein Boden rollt: vielleicht ${value}-mal so schwer wie geplant, aber alles von ${low} bis ${high} ist möglich`,
    drag: (value, _, low, high, sure) =>
      sure ? `Die Luft bremst etwa ${value}-mal so stark wie geplant (${low} bis ${high}).` : `wie die Luft bremst: vielleicht ${value}-mal so stark wie geplant, aber alles von ${low} bis ${high} ist möglich`,
    start: (value, planned, low, high, sure) =>
      sure ? `Das Tempo am Start war etwa ${value}, geplant ${planned} (${low} bis ${high}).` : `das Tempo am Start: vielleicht ${value}, geplant ${planned}, aber alles von ${low} bis ${high} ist möglich`,
    skill: (value, planned, low, high, sure) =>
      sure ? `Beim Pumpen klappt etwa ${value} von 1, geplant ${planned} (${low} bis ${high}).` : `wie gut das Pumpen klappt: vielleicht ${value} von 1, geplant ${planned}, aber alles von ${low} bis ${high} ist möglich`,
  },
  unsure: "Was du gesehen hast, verrät wenig über:",
  fits: "Alles, was du gesehen hast, passt zusammen, so gut man es messen konnte.",
  roughly: (times) => `Was du gesehen hast, passt nur grob zusammen: Es liegt ${times}-mal so weit daneben, wie es vom Messen kommen kann.`,
  few: "Du hast erst wenig gesehen: Was geplant war, zählt hier noch viel.",
  tell: (more) => `Mehr würde verraten: ${more}.`,
  more: { flag: "eine zweite Zeit oder ein zweites Tempo", landing: "eine Landung" },
  one: (name) => `Das passt nicht zusammen: ${name} widerspricht dem Rest. Ohne das passt alles andere. Prüfe es, oder nimm es heraus.`,
  two: (names) => `Das passt nicht zusammen: ${names} widersprechen sich. Eins davon ist falsch.`,
  many: (names) => `Das passt nicht zusammen. Eins davon ist falsch, aber es kann jedes sein: ${names}.`,
  none: (names) => `Das passt nicht zusammen, und es liegt an keinem allein. Am weitesten daneben: ${names}.`,
  noneFar: "Das passt nicht zusammen, und es liegt an keinem allein.",
  rest: "Für den Rest der Line heißt das:",
  lip: (name, speed, by, planned) => `${name}: ${speed} am Absprung, ${by} mehr oder weniger${planned ? `; geplant ${planned}` : ""}.`,
  // Why a lip comes out faster than the timing lets expect, or slower: of each input both.
  because: {
    rolling: ["der Boden rollt leichter", "der Boden rollt schwerer"],
    drag: ["die Luft bremst weniger", "die Luft bremst mehr"],
    start: ["der Start war schneller", "der Start war langsamer"],
    skill: ["das Pumpen klappt besser", "das Pumpen klappt schlechter"],
  },
  against: (faster, why) => `${faster ? "Schneller, obwohl langsamer gestoppt" : "Langsamer, obwohl schneller gestoppt"}: Nach dem, was du gesehen hast, gilt: ${why} als geplant, und das zählt hier mehr.`,
  byChance: (faster, scatter) =>
    `${faster ? "Schneller, obwohl langsamer gestoppt" : "Langsamer, obwohl schneller gestoppt"}: Bei diesem Tempo hüpft das Rad anders über das, was davor liegt. Fahrten, die fast gleich sind, liegen hier ${scatter} auseinander.`,
  // What would become of jumps that are clean as planned.
  spoils: (name, how) => `Bevor du das übernimmst: ${name} ist geplant sauber, aber damit gilt: ${how}.`,
  lessSure: (name, clean, tried, now) => `Bevor du das übernimmst: Damit ist ${name} nur in ${clean} von ${tried} Proben sauber, jetzt in ${now}.`,
  narrower: "Die Spanne neben jedem Tempo ist jetzt das, was diese Fahrt offenlässt, und der Wind: dieses Kind oder dieser Mensch, dieser Boden, so gefahren. Wer anders fährt oder an einem anderen Tag, für den gilt sie nicht.",
  same: "Der Plan fährt sich schon so, soweit diese Fahrt das verrät.",
  use: "In den Plan übernehmen",
  used: "Was gefunden wurde, steht jetzt im Plan. „Zurück“ nimmt es zurück.",
  ranges: "In neunzehn von zwanzig solchen Spannen liegt der wahre Wert, wenn das Rechenmodell stimmt. Sie sagen etwas über einen Tag, und versprechen nichts.",
};

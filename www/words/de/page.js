// What the page says by itself: its buttons, panels, and what it reports.

// What stands in the page itself, in `index.html`.
export const page = {
  units: "Maße",
  metres: "Meter",
  feet: "Fuß",
  send: "Senden",
  name: "Name der Line",
  what: "Deine Line, schon gefahren, bevor du gräbst. Tippe ein Teil an und ändere es. Schick die Line an Freunde.",
  ride: "Die Fahrt",
  drawing: "Die Line von der Seite, mit jemandem auf dem Rad",
  saddle: "Die Line voraus, wie man sie vom Rad aus sieht",
  moment: "Zeitpunkt der Fahrt",
  watch: "Fahrt ansehen",
  restart: "Von vorn",
  whole: "Ganze Line",
  result: "So lief es",
  sent: "Diese Line hat dir jemand geschickt.",
  keep: "Kopie bearbeiten",
  stop: "Nicht mehr vergleichen",
  begin: "Eigene Line anfangen:",
  answers: "Mit vier Antworten",
  example: "Mit einem Beispiel",
  empty: "Im leeren Garten",
  jumps: "Die Sprünge, einer nach dem anderen",
  range: "Von bis",
  exit: "Abflug",
  airtime: "In der Luft",
  wheels: "Räder landen",
  caution:
    "Ausgerechnet, nicht gemessen. Zuerst fährt ein Erwachsener, mit Helm und Schützern, und prüft das Tempo an jedem Absprung. Erst dann ist ein Kind dran. Die Regeln bei dir vor Ort gehen vor.",
  costs: "Wo das Tempo bleibt",
  feature: "Teil",
  takes: "Kostet",
  causes: "Wodurch",
  feels: "Wie sich jeder Sprung anfühlt",
  whatIf: "Was wäre, wenn …",
  testDay: "Testtag",
  seen: "Nach einer Probefahrt",
  limits: "So wird gerechnet, und das fehlt dabei (englisch)",
  plan: "Der Plan",
  means: "Was das heißt",
  steps: "Rückgängig machen und wiederholen",
  undo: "Zurück",
  redo: "Vor",
  lines: "Meine Lines",
};

// The string along the page: its pegs, and the tag that hangs on it while fields are open.
export const ways = {
  all: "Auf dieser Seite",
  ride: "Fahrt",
  result: "Urteil",
  plan: "Plan",
  means: "Folgen",
  jump: (name, speed, how) => (speed ? `${name}: ${speed}, ${how}` : `${name}: ${how}`),
  unready: "So noch nicht fahrbar: zeigen, warum",
};

// What stands beside a thing by its look.
export const styled = { mend: "hier stimmt was nicht", at: "mit" };

export const play = { ride: "Fahren", pause: "Pause", again: "Nochmal" };
// How fast the ride goes by, and from where it can be seen.
export const pace = { full: "Volles Tempo", air: "Langsam in der Luft", slow: "Langsam" };
export const view = { side: "Von der Seite", saddle: "Vom Rad aus" };
export const state = { air: "in der Luft" };

// What stands before the tenths.
export const point = ",";
export const seconds = (s) => `${s} s`;
export const degrees = (degrees) => `${degrees}°`;

export const energyLine = "Tempo als Höhe";
// The last feature in the drawing, where the rider rolls over its end.
export const rolling = (name, speed) => `${name}: am Ende noch ${speed}`;

export const share = {
  title: "Diese Line senden",
  what: "Im Link steckt die ganze Line. Wer ihn öffnet, sieht genau diese, und die eigenen bleiben, wie sie sind.",
  send: "An jemanden senden",
  copy: "Link kopieren",
  copied: "Link kopiert.",
  byHand: "Kopiere diesen Link:",
  code: "Oder halte die Kamera eines anderen Handys hierauf.",
  codeName: "Der Link als QR-Code",
  long: "Für einen QR-Code ist diese Line zu lang. Kopiere den Link.",
  save: "Speichern",
  png: "Bild (PNG)",
  svg: "Bild (SVG)",
  csv: "Zahlen (CSV)",
  json: "Plan (JSON)",
  saved: (name) => `Gespeichert als ${name}.`,
  failed: "Das ging hier nicht.",
  close: "Schließen",
  faulty: "Ändere erst die markierten Zahlen: Senden kannst du nur eine Line, die funktioniert.",
  text: (name, speeds, caution) => `${name}. ${speeds ? `Tempo am Absprung: ${speeds}. ` : ""}${caution}`,
  lip: (name, speed) => `${name} ${speed}`,
};

// The whole line as a picture.
export const picture = {
  legend: (unit) => `Unter jedem Absprung steht das Tempo in ${unit} und darunter, von wo bis wo es liegen kann. Der dünne Strich oben ist das Tempo als Höhe.`,
};

// The jumps as a table for a spreadsheet.
export const table = {
  rider: "Wer fährt",
  jump: "Sprung",
  speed: "Tempo am Absprung",
  slowest: "Vielleicht ab",
  fastest: "Vielleicht bis",
  worksFrom: "Klappt ab",
  worksTo: "Klappt bis",
  exit: "Winkel beim Abflug (°)",
  airtime: "In der Luft (s)",
  rear: "Hinterrad hinter der Landekante",
  front: "Vorderrad hinter der Landekante",
  drop: "Wie ein Drop aus",
  how: "Wie es lief",
  heading: (what, unit) => `${what} (${unit})`,
  caution: "Ausgerechnet, nicht gemessen",
};

// The yard's ground as readings.
export const readings = {
  title: "Gemessener Boden",
  label: (unit) => `Abstand vom Anfang und Höhe, ein Messpunkt pro Zeile, in ${unit}. Tippe sie ein oder füge zwei Spalten ein.`,
  use: "Diese Punkte nehmen",
  save: "Punkte speichern (CSV)",
  even: "Lieber ein gleichmäßiges Gefälle",
  station: "Abstand",
  height: "Höhe",
  few: "Zwei Messpunkte braucht es mindestens.",
  more: (count) => `Und noch ${count} Zeilen.`,
  at: (row) => `Messpunkt ${row}: `,
};

// A first line from four answers.
export const newLine = {
  title: "Eine neue Line aus vier Antworten",
  name: "Eine neue Line",
  length: "Wie lang ist dein Gelände?",
  fall: "Wie viel fällt es vom Anfang bis zum Ende?",
  tallest: "Wie hoch darf das Höchste werden?",
  rider: "Wer fährt?",
  go: "Zeichnen",
};

// What can be taken hold of on the drawing.
export const grips = {
  platform: "Plattform am Start: nach oben oder unten ziehen",
  top: "Spitze der Welle: nach oben oder unten ziehen",
  lip: "Kante des Absprungs: ziehen, oder mit den Pfeiltasten",
  knuckle: "Kante der Landung: ziehen, oder mit den Pfeiltasten",
};

// The reader's own lines.
export const lines = {
  none: "Noch keine. Eine Line bleibt auf diesem Gerät, sobald du etwas an ihr änderst.",
  here: "gerade offen",
  unnamed: "Eine Line ohne Namen",
  open: "Öffnen",
  copy: "Kopieren",
  remove: "Löschen",
  compare: "Vergleichen",
  comparedWith: (name) => `Blass darunter gezeichnet: ${name}.`,
  faulty: (name) => `So, wie sie ist, kann man diese Line nicht fahren: ${name}.`,
  removed: (name) => `${name} ist gelöscht. `,
  bring: "Zurückholen",
  second: (name) => `${name} 2`.slice(0, 60),
  taken: "Diese Line wurde in einem anderen Tab geändert. Was du hier änderst, bleibt als zweite Line.",
  full: "Auf diesem Gerät ist kein Platz mehr für Lines. Schick dir selbst den Link: In ihm steckt die ganze Line.",
  unread: (count) => `${count === 1 ? "Eine Line" : `${count} Lines`} auf diesem Gerät kann diese Fassung der Seite nicht lesen. Verloren ist davon nichts; eine neuere Fassung kann es vielleicht lesen.`,
  starts: "Lines für den Anfang",
  save: "Als Datei speichern",
  load: "Datei öffnen",
  noFile: (why, field) => `Diese Datei ist kein Plan: ${why} (${field}).`,
  empty: "Ein leerer Garten",
};

export const damaged = (why) => `Der Link ging nicht: ${why}. Hier ist stattdessen die Beispiel-Line.`;
export const otherModel = (made, now) =>
  made < now
    ? `Dieser Link ist mit Rechenmodell ${made} gemacht. Hier rechnet Modell ${now}: Das Tempo kann anders sein als bei dem, der ihn geschickt hat.`
    : `Dieser Link ist mit einem neueren Rechenmodell gemacht (${made}); diese Seite hat Modell ${now}. Lade die Seite neu, dann hast du das neuere.`;
export const model = (version) => `Rechenmodell ${version}`;
export const broken = "Die Seite konnte nicht starten. Lade sie neu.";

// A newer version of the page has come.
export const newer = "Eine neuere Fassung ist da. ";
export const loadAgain = "Neu laden";

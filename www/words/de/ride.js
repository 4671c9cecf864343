// What a ride means: each jump, the line, where the speed goes.

export const noJumps = "Auf dieser Line gibt es noch keinen Sprung.";
export const allClean = (count) => (count === 1 ? "Wie geplant landet der Sprung sauber." : `Wie geplant landen alle ${count} Sprünge sauber.`);
export const look = (names) => `Schau dir ${names} an.`;
// Where the wheels came down against the knuckle: lengths written out, and whether each is short.
export const wheels = (rear, rearShort, front, frontShort) => {
  const where = (short) => (short ? "vor" : "hinter");
  const first = rearShort === frontShort ? "" : ` ${where(rearShort)}`;
  return `Hinterrad ${rear}${first}, Vorderrad ${front} ${where(frontShort)} der Landekante`;
};
// A speed's range, both ends written out, the unit behind the second.
export const range = (slowest, fastest, unit) => `${slowest} bis ${fastest} ${unit}`;
// What becomes of a jump where the things nobody knows well are a little off.
export const tries = ({ tried, left, clean, short, far, crashed }) => {
  if (clean === tried) return `Auch wenn es etwas anders kommt: in allen ${tried} Proben sauber.`;
  const other = { "zu kurz": short, "zu weit": far, Sturz: crashed, "nicht angekommen": tried - left };
  const rest = Object.entries(other).flatMap(([what, count]) => (count ? `${what} in ${count}` : []));
  return `Wenn es etwas anders kommt: sauber in ${clean} von ${tried} Proben${rest.length ? `; ${rest.join(", ")}` : ""}.`;
};

// How far what is dug for a jump may be off: the tightest first; lengths written out, 0 where there is none.
export const dug = {
  kinds: {
    start: ["Start", "höher", "niedriger"],
    flat: ["jedes Flachstück", "länger", "kürzer"],
    roller: ["jede Welle", "höher", "niedriger"],
    lip_height: ["Höhe des Absprungs", "höher", "niedriger"],
    lip_radius: ["Radius des Absprungs", "größer", "kleiner"],
    gap: ["Lücke", "länger", "kürzer"],
  },
  limit: ([kind, more, less], isMore, most) => `${kind}, ${most ? `höchstens ${most} ${isMore ? more : less}` : `kein bisschen ${isMore ? more : less}`}`,
  beyond: (limit, how) => `${limit} (darüber: ${how})`,
  told: (tightest, rest, looked) =>
    tightest
      ? `Beim Graben am engsten: ${tightest}.${rest.length ? ` Danach: ${rest.join("; ")}.` : ""} Jedes für sich, sonst alles wie geplant; was nicht genannt ist, darf ${looked} danebenliegen.`
      : `Beim Graben dürfen Start, Flachstücke, Wellen, Absprung und Lücke je ${looked} danebenliegen.`,
};
// How a jump went, by the judge's word for it; `by` is a length already written out.
export const how = {
  clean: () => "Sauber: Beide Räder landen auf der Schräge.",
  short: (by, decked) =>
    by ? `Kommt ${by} zu kurz: Das Hinterrad ${decked ? "landet auf dem Deck" : "schlägt vorn an der Landung an"}.` : "Rollt über den Absprung, ohne zu fliegen.",
  knuckle: () => "Auf der Landekante: ein harter Schlag fürs Hinterrad.",
  deep: () => "Weit: erst kurz vor dem Ende der Schräge.",
  past: () => "Über die Landung hinaus: ins Flache, und hart.",
  crashed: () => "Sturz.",
  stalled: () => "Rollt vor dem Absprung zurück: zu langsam.",
  not_reached: () => "Kommt nicht bis hierher.",
};

// Words of the trade as they stand in these texts, and what they mean.
export const terms = {
  knuckle: ["Landekante", "Die Landekante ist die obere Kante der Landung, an der die Schräge beginnt. Beide Räder sollen dahinter aufkommen."],
  short: ["schlägt vorn an", "Das Hinterrad trifft die Vorderseite oder die Oberkante der Landung, weil der Sprung zu kurz war."],
  decked: ["Deck", "Das Deck sind die Bretter über der Lücke. Wer zu kurz kommt, rollt darüber weiter."],
  deep: ["Weit:", "Weit ist so tief auf der Schräge, dass kaum etwas davon bleibt: etwas schneller, und du landest im Flachen."],
  lip: ["Absprung", "Der Absprung ist das gebogene Ende eines Sprungs, das dich in die Luft wirft."],
  gap: ["Lücke", "Die Lücke ist das, worüber du fliegst: waagerecht von der Kante des Absprungs bis zur Landekante."],
  roller: ["Welle", "Eine Welle ist ein runder Buckel, auf dem beide Räder bleiben. Wer hinter der Spitze drückt und sich davor leicht macht, wird schneller."],
  run_out: ["Auslauf", "Der Auslauf ist das flache Stück hinter dem letzten Sprung, auf dem man ausrollt oder bis zum Stand bremst."],
  tries: ["Proben", "In einer Probe wird die Line noch einmal gefahren, und eins ist ein wenig anders: Schubs, Boden, Wind, Reifen, Fahrer. Es zeigt, wie sicher ein Sprung ist."],
  pumping: ["pumpt", "Wer pumpt, drückt dort, wo der Boden abfällt, und macht sich leicht, wo er steigt. Das bringt Tempo ohne Treten."],
  travel_left: ["einfedern", "So weit können die Knie noch beugen. Ist nichts mehr übrig, geht die Landung bis in den Körper."],
  wheelbase: ["Radstand", "Der Radstand ist der Abstand der beiden Achsen."],
  bead_seat: ["Reifensitz", "Am Reifensitz sitzt der Reifen in der Felge. Sein Durchmesser steht auf dem Reifen, wie die 406 in 50-406."],
  drag_area: ["Fläche im Wind", "Die Fläche im Wind sagt, wie viel Wind der Fahrer fängt: geduckt wenig, aufrecht viel."],
  bank_deg: ["Schräglage", "In einer Kurve mit Schräglage liegt der Boden nach innen schräg, damit die Räder halten."],
};

// The same at a glance.
export const howShort = {
  clean: "sauber",
  short: "zu kurz",
  knuckle: "auf der Landekante",
  deep: "weit",
  past: "über die Landung hinaus",
  crashed: "Sturz",
  stalled: "rollt zurück",
  not_reached: "kommt nicht hin",
};

// The window of speeds in which a jump works, and what happens at either end of it.
export const window = (slowest, fastest) => `Klappt von ${slowest} bis ${fastest}.`;
export const noWindow = "Hier klappt kein Tempo: Schau dir Lücke und Landung an.";
export const spare = (below, above) => `Spielraum: ${below} langsamer, ${above} schneller.`;
export const missing = (by) => `Diese Fahrt ist ${by} zu langsam.`;
export const over = (by) => `Diese Fahrt ist ${by} zu schnell.`;
export const tooSlow = { short: "langsamer: zu kurz", knuckle: "langsamer: Landekante", crashed: "langsamer: Sturz", other: "langsamer: kommt nicht hin" };
export const tooFast = { deep: "schneller: weit", past: "schneller: darüber hinaus", crashed: "schneller: Sturz", other: "schneller: nicht versucht" };
export const sureOfAll = (tried) => `Das tun sie auch in allen ${tried} Proben.`;
export const sureOfIt = (tried) => `Das tut er auch in allen ${tried} Proben.`;
export const leastSure = (name, clean, tried) => `${name} ist am wenigsten sicher: sauber in ${clean} von ${tried} Proben.`;
export const pitched = (turn, high) => (turn < 1 ? "genau wie die Schräge geneigt" : `Nase ${turn}° zu ${high ? "hoch" : "tief"}`);
export const impact = (first, g, left, pitch, drop) =>
  `${first === "rear" ? "Hinterrad" : "Vorderrad"} zuerst, ${pitch}; bis zum ${g}-Fachen des Körpergewichts, die Beine können noch ${left} einfedern; wie ein Drop aus ${drop}.`;
export const landingLost = (head, speed) =>
  speed ? `Die Landung kostet ${head} Höhe: ${speed} am nächsten Absprung.` : `Die Landung kostet ${head} Höhe für das, was danach kommt.`;
export const suggest = {
  gap: (now, then) => `Mit einer Lücke von ${then} statt ${now} landet er sauber.`,
  platform: (now, then) => `Mit dem Start auf ${then} statt ${now} landet er sauber.`,
};
// How the line ends, in the table.
export const ending = {
  stands: (left) => `Kommt ${left} vor dem Ende zum Stehen.`,
  leaves: (missing) => `Rollt am Ende noch${missing ? `: Dem Auslauf fehlen ${missing}` : ""}.`,
  never: "Nicht erreicht.",
};
export const tryIt = "Ausprobieren";
export const otherAt = (who, speed, how) => (speed ? `${who}: ${speed} am Absprung, ${how}.` : `${who}: ${how}.`);
export const noProof = (who, first) => `Klappt es bei „${who}“, sagt das hier nichts über „${first}“.`;
export const apart = (first, by, slower) => `${first} kommt ${by} ${slower ? "langsamer" : "schneller"} an.`;
// Why one rider arrives faster than another: what was taken from each up to the first lip, as heights.
export const why = (who, first, lip, parts) =>
  `Bis zum Absprung von ${lip}, „${first}“ und „${who}“: ${parts.map(([what, a, b]) => `${what} ${a} und ${b}`).join(", ")}.`;
export const whyParts = { rolling: "Rollen kostet", drag: "Luft kostet", body: "Reifen, Beine und Hüpfer kosten", given: "Beine bringen zurück" };

// Where the speed goes.
export const tolls = {
  all: (names, lip, speed) => `${names}: Wäre hier flacher Boden, käme man ${speed} schneller an den Absprung von ${lip}.`,
  fewer: (speed) => `Eine weniger bringt ${speed} zurück.`,
  higher: (height) => `Ein ${height} höherer Start macht das wett.`,
  gives: (names, lip, speed) => `${names}: bringen Tempo. Am Absprung von ${lip} ist man ${speed} schneller als mit flachem Boden an ihrer Stelle.`,
  none: (names) => `${names}: kosten nichts, was man am nächsten Absprung merkt.`,
  intro: "Wie viel Höhe der Startrampe jedes Teil verbraucht, und wie viel Tempo das am nächsten Absprung wert ist.",
  blocked: (names, lip) => `${names}: Ohne sie käme man bis ${lip}.`,
};
export const causes = {
  rolling: "Rollen",
  drag: "Luft",
  landing: "Landung",
  tyres: "Reifen",
  legs: "Beine",
  turning: "Kurve",
  braking: "Bremse",
};
export const given = (height) => `Beine bringen ${height} zurück`;
// What rollers take one by one: a list of lengths written out.
export const oneByOne = (heights) => `Eine nach der anderen ${heights}.`;
export const takes = (height, speed, gained) => {
  if (gained) return `${height}, und doch ${gained} mehr am nächsten Absprung`;
  return speed ? `${height}, ${speed} am nächsten Absprung` : height;
};
export const gives = (height, gained) => (gained ? `bringt ${height}, ${gained} mehr am nächsten Absprung` : `bringt ${height}`);
// What comes back where another ride would lose it.
export const back = (cause, height) => `${cause}: ${height} zurück`;

export const hard = (drop) => `Schlägt so hart auf wie ein Drop aus ${drop}. Lass die Schräge so fallen, wie man fliegt.`;

export const crashes = {
  frame_hit: "der Rahmen schlägt auf den Boden",
  rider_hit: "der Körper schlägt auf den Boden",
  over_the_bars: "über den Lenker",
  looped_out: "nach hinten vom Rad",
  too_hard: "die Landung ist zu hart, um sich festzuhalten",
  lost: "hier sind die Zahlen davongelaufen",
};

export const told = {
  stands: (who, s) => `${who} fährt die ganze Line in ${s} Sekunden und kommt zum Stehen.`,
  leaves: (who, s, speed) => `${who} fährt die ganze Line in ${s} Sekunden, verlässt ihr Ende aber mit ${speed}.`,
  stalled: (who, where, missing) => `${who} rollt zurück (${where}): ${missing} zu langsam, um darüber zu kommen.`,
  crashed: (who, where, why) => `${who} stürzt (${where}): ${why}.`,
  timed_out: (who) => `${who} rollt nach zwei Minuten immer noch.`,
  broken_off: (who, s) => `Nach ${s} Sekunden ist die Fahrt von ${who} abgebrochen: Sie braucht zu viele Rechenschritte.`,
};

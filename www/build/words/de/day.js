// The test day on paper.

export const day = {
  adult: "Zuerst fährt ein Erwachsener, mit Helm und Schützern. Ein Kind fährt erst, wenn jede Fahne ihr Tempo gezeigt hat, und darf immer Nein sagen.",
  surveyed: "Für eine vermessene Line gibt es keine Reihenfolge: Fahrt jeden Teil erst langsam.",
  noJumps: "Auf dieser Line ist noch kein Sprung.",
  before: "Bevor jemand fährt",
  inspect: [
    "Jeder Absprung steht fest: von allen Seiten gedrückt, verankert, nichts ist lose.",
    "Kante, Lücke, Landekante und Landung sind mit den Blättern verglichen.",
    "Geländer, Treppe und Streben der Startrampe stehen fest.",
    "Kein Nagel, keine Schraube, kein Splitter und kein Stangenende steht vor; kein Stein und kein Werkzeug liegt auf der Fahrbahn.",
    "Der Boden ist trocken und fest; kein Wind, der dünne Äste bewegt.",
    "Landung und Auslauf sind frei, nichts Hartes steht neben der Line, Hunde und kleine Kinder sind weg.",
    "Fahnen stehen; Stoppuhr, Maßband und dieses Blatt liegen bereit; um jeden Sprung führt ein Weg herum.",
  ],
  gear: "Was beim Fahren getragen wird",
  wear: ["Ein Helm, der passt und zu ist; für Sprünge einer mit Kinnschutz.", "Handschuhe, Schützer an Knien und Ellbogen; lange Ärmel; Schuhe, die auf den Pedalen halten.", "Das Rad ist durchgesehen: Bremsen, Lenkkopf, Räder fest, Reifen mit dem geplanten Druck, Kette, kein Ständer und kein Korb."],
  people: "Wer wo steht",
  stand: [
    "Eine Person am Start: lässt immer nur eine fahren, nach einem Ruf von unten.",
    "Eine Person neben dem Sprung, der dran ist, abseits der Line, auf der Seite, auf die niemand fällt: Sie sieht auf die Räder und fängt niemanden auf.",
    "Eine Person am Auslauf: sagt, wann er frei ist.",
    "Ein Erwachsener, der Erste Hilfe kann, mit einem Telefon, das hier Netz hat, und der die Adresse weiß.",
    "Alle anderen hinter dem Band.",
  ],
  order: "In welcher Reihenfolge, und was jede Fahne zeigen muss",
  happened: "Was geschah",
  writeHow: "Schreib es dort auf, wo du es siehst. Trag es später unter „Nach einer Probefahrt“ ein: Daraus lernt die Seite, wie dein Boden rollt. Orte zählen waagerecht vom Anfang bis zur Mitte des Rads.",
  rider: "Wer",
  note: "Notiz",
  minus: "Waagerecht von der Landekante bis zur Spur des Hinterrads; mit einem Minus, wenn es davor aufkam.",
  rolled: "Nur ohne Bremsen.",
};

// What a ride is like for whoever rides: in words for a child.

// The load in words a child has, from none to much; and the speed.
export const feel = {
  weights: ["schwebend", "leicht", "normal", "schwer", "sehr schwer"],
  paces: ["steht", "Schritttempo", "Dauerlauf", "so schnell, wie du rennst", "schneller, als du rennen kannst"],
  air: (seconds, height) => `${seconds} s in der Luft, ${height} hoch`,
};

export const cards = {
  flight: (height, far, seconds) => `Bis zu ${height} über dem Boden, ${far} weit, ${seconds} in der Luft.`,
  lip: (times) => `Im Absprung wiegst du so viel wie ${times} von dir.`,
  // How hard a landing is, from soft to hard; the height written out.
  landing: {
    kerb: (drop) => `Du landest weich, wie von der Bordsteinkante (aus ${drop} Höhe).`,
    stair: (drop) => `Du landest wie nach einem Hüpfer von einer Treppenstufe (aus ${drop} Höhe).`,
    chair: (drop) => `Du landest hart, wie nach einem Sprung vom Stuhl (aus ${drop} Höhe).`,
    table: (drop) => `Du landest sehr hart, wie nach einem Sprung vom Tisch (aus ${drop} Höhe). Das ist zu viel für ein Kind.`,
  },
  // However low the drop: on the edge of the landing, or with legs that have nothing left to give.
  knuckle: "Du kommst auf der Kante der Landung auf: ein harter Schlag von hinten.",
  spent: (times) => `Du landest hart, so schwer wie ${times} von dir, und deine Beine geben nicht mehr nach.`,
  not: (how) => `Noch kein Sprung zum Fahren: ${how}.`,
  rules: [
    "Helm auf und zu, Schützer an Knien und Ellbogen.",
    "Erst fährt ein Erwachsener, jedes Mal, wenn etwas geändert wurde.",
    "Schau dir den ganzen Sprung an, bevor du fährst. Unsicher? Dann fahr daran vorbei.",
    "Ist der Boden weich oder nass? Dann ist Schluss für heute.",
  ],
};

export const whatIf = {
  intro: "Tippe etwas an, und es fährt blass mit.",
  // The button, and the label over the rider.
  kinds: {
    more: ["Mehr Schwung", "mehr Schwung"],
    less: ["Weniger Schwung", "weniger Schwung"],
    passive: ["Steif wie ein Brett", "steif"],
    absorbing: ["Wellen schlucken", "schluckt"],
    pumping: ["Pumpen", "pumpt"],
    damp: ["Feuchter Boden", "feucht"],
    dry: ["Trockener Boden", "trocken"],
  },
  same: (speed) => `${speed} am Absprung, genauso`,
  other: (speed, by, slower) => `${speed} am Absprung, ${by} ${slower ? "langsamer" : "schneller"}`,
  jump: (name, speed, how) => `${name}: ${speed}, ${how}`,
  never: (name, how) => `${name}: ${how}`,
  told: (label, jumps) => `${label}. ${jumps}.`,
};

export const sound = { on: "Ton an", off: "Ton aus" };

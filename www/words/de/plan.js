// The plan: its features, riders, yard and weather, and where their numbers come from.

export const kinds = {
  start_ramp: "Startrampe",
  flat: "Flachstück",
  roller: "Welle",
  jump: "Sprung",
  turn: "Kurve",
  run_out: "Auslauf",
};

export const rollers = (first, last) => `Wellen ${first}–${last}`;
export const numbered = (kind, number) => `${kinds[kind]} ${number}`;

// A feature at a glance; `l` writes a length out.
export const digests = {
  start_ramp: (f, l) => `${l(f.platform_height)} hoch`,
  flat: (f, l) => `${l(f.length)} lang`,
  roller: (f, l) => `${l(f.height)} hoch`,
  jump: (f, l) => `Absprung ${l(f.lip.height)}, Lücke ${l(f.gap)}`,
  turn: (f, l) => `Radius ${l(f.radius)}`,
  run_out: (f, l) => `${l(f.length)} lang`,
};

export const surfaces = {
  wood: "Holz",
  paved: "Asphalt",
  packed: "Festgeklopfte Erde",
  gravel: "Schotter",
  grass: "Wiese",
  soft: "Lockere Erde",
};

// Worin gegraben und was gebaut wird.
export const soils = { sand: "Sand", gravel: "Sand mit Kieseln", loam: "Gartenerde", clay: "Lehm, der klebt" };

export const dig = {
  title: "Zum Graben und Bauen",
  intro: "An der Fahrt ändert das nichts. Es entscheidet, wie viel zu graben, zu sägen und zu fahren ist.",
  soil: "Worin du gräbst",
  width: "Breite",
  own: "Hat eine eigene Breite",
  lip: "Breite des Absprungs",
  ownLip: "Der Absprung hat eine eigene Breite",
  landing: "Breite der Landung",
  ownLanding: "Die Landung hat eine eigene Breite",
  boxed: "Bretter halten die Erde der Landung",
  sheets: "Blätter zum Bauen: Pflöcke, Zuschnitt, Erde, Testtag",
};

export const styles = { passive: "Steif wie ein Brett", absorbing: "Schluckt Wellen weg", pumping: "Pumpt sich schneller" };
export const grounds = { dry: "Trocken", damp: "Feucht", soft: "Weich: nicht fahren" };

export const act = {
  earlier: "Nach vorn",
  later: "Nach hinten",
  remove: "Entfernen",
  removeRider: "Diese Person herausnehmen",
  add: "Danach einfügen",
  less: (name) => `Weniger: ${name}`,
  more: (name) => `Mehr: ${name}`,
};

export const cautions = {
  platform: "Von hier zu fallen tut weh. Bau ein Geländer um die Plattform.",
  gap: "Wer zu kurz kommt, den bestraft die Lücke. Ein Deck darüber verzeiht.",
  soft: "Weicher Boden hält die Räder fest und wird zerfurcht. Warte, bis er trocken ist.",
};

// A rider to start from.
export const preset = {
  legend: "Mit einem Alter anfangen",
  age: "Alter",
  years: (age, adult) => (adult ? `Erwachsen (${age})` : `${age} Jahre`),
  sex: "Wachstumskurve",
  sexes: { either: "Mitte von beiden", girl: "Mädchen oder Frau", boy: "Junge oder Mann" },
  wheel: "Räder",
  fitting: (inches) => `${inches} Zoll, passt`,
  inches: (inches) => `${inches} Zoll`,
  tread: "Reifen",
  treads: { smooth: "Flaches Profil", knobby: "Hohe Stollen" },
  name: (age, adult) => (adult ? "Erwachsen" : `${age < 13 ? "Kind" : "Jugend"}, ${age}`),
  again: (name, n) => `${name} (${n})`,
  line: (word, middle, likely) => `${word} ${middle}. ${likely}`,
  mass: "Gewicht",
  stature: "Größe",
  from: "Aus den CDC-Wachstumskurven 2000, ohne Kleidung: Kleidung und Schützer kommen dazu. Noch besser: Du wiegst und misst selbst. Unten kannst du jede Zahl ändern, und jede sagt, woher sie kommt.",
  replace: (label) => `Für ${label} nehmen`,
  add: "Noch jemanden dazunehmen",
};

export const likely = (low, high) => `Acht von zehn liegen zwischen ${low} und ${high}.`;

// What the lines that come with the page, and their riders, are called: by the names in their files.
export const called = {
  "The orchard above the school": "Der Obstgarten über der Schule",
  "The first jump by the hen house": "Der erste Sprung am Hühnerstall",
  "Three tables along the hedge": "Drei Tables an der Hecke",
  "Child, 6": "Kind, 6",
  "Child, 10": "Kind, 10",
  "Youth, 14": "Jugend, 14",
  Adult: "Erwachsen",
};

// Where a number comes from.
export const sources = {
  growth_charts: "CDC-Wachstumskurven 2000, ohne Kleidung.",
  frontal_area: "Bassett und andere 1999, aus Gewicht, Größe und Haltung; mal 1,1, Gross und andere 1983.",
  bead_seat: "ISO 5775.",
  knobby_tyre: "Gross, Kyle und Malewicki 1983: Stollenreifen auf Asphalt.",
  course: "Maier und andere 2018: eine Cross-Country-Strecke.",
  knobby_to_course: "Zwischen Gross und anderen 1983 und Maier und anderen 2018.",
  handbook: "Wilson, Bicycling Science, aus dem Gedächtnis.",
  common_practice: "So üblich, ohne Quelle.",
};

export const groups = {
  lip: "Absprung",
  gap: "Lücke",
  landing: "Landung",
  rider: "Fahrer",
  bike: "Rad",
  wheels: "Laufräder, und wie sie rollen",
  rolling: "Rollwiderstand auf trockenem Boden (Beiwert)",
  yard: "Gelände",
  weather: "Wetter",
  survey: (count) => `Eine vermessene Line aus ${count} Punkten.`,
};

export const fields = {
  platform_height: "Höhe der Plattform",
  angle_deg: "Steilheit",
  bottom_radius: "Bogen unten (Radius)",
  edge_radius: "Rundung oben (Radius)",
  push_off: "Tempo beim Abstoßen",
  surface: "Woraus",
  length: "Länge",
  height: "Höhe",
  count: "Wie viele",
  radius: "Kreis, mit dem er gezeichnet ist (Radius)",
  lead_in: "Gerade Erdrampe unter dem Absprung",
  lead_angle: "Steilheit der Rampe",
  lead_length: "Länge der Rampe",
  straight_end: "Endet in einem geraden Stück",
  straight_length: "Länge dieses Stücks",
  gap: "Lücke, vom Absprung zur Landekante",
  decked: "Deck über der Lücke",
  knuckle: "Höhe der Landekante",
  slope: "Steilheit der Landung",
  knuckle_radius: "Rundung der Landekante (Radius)",
  bed: "Endet auf einem erhöhten Stück",
  initial_speed: "Tempo am Start",
  bed_length: "Länge der Landeschräge",
  sweep_deg: "Wie weit herum",
  bank_deg: "Schräglage der Kurve",
  turn_radius: "Radius der Kurve",
  label: "Wer fährt",
  name: "Name",
  style: "Auf Wellen",
  skill: "Wie gut (0 bis 1)",
  posture: "Haltung (0 geduckt, 1 aufrecht)",
  mass: "Gewicht mit Kleidung",
  stature: "Größe",
  drag_area: "Fläche im Wind",
  bike_mass: "Gewicht des Rads",
  wheel_mass: "Gewicht eines Laufrads",
  wheel_inertia: "Trägheit eines Laufrads",
  wheelbase: "Radstand",
  bead_seat: "Felge (Durchmesser am Reifensitz)",
  tyre_width: "Reifenbreite",
  tyre_pressure: "Reifendruck",
  yard_length: "Länge",
  limited: "Nichts zu hoch",
  tallest: "Nichts höher als",
  fall: "Gefälle vom Anfang bis zum Ende",
  altitude: "Höhe über dem Meer",
  temperature: "Temperatur",
  tailwind: "Wind von hinten",
  ground: "Boden",
};

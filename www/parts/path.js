// Places in a plan by their written path, as faults name them: `line.features[3].lip.height`.

const keys = (path) => path.split(/[.[\]]+/).filter(Boolean);

/** The value at a path; undefined where there is none. */
export const get = (root, path) => keys(path).reduce((at, key) => at?.[key], root);

/** Puts a value at a path; undefined takes the field away. */
export function set(root, path, value) {
  const all = keys(path);
  const last = all.pop();
  const at = all.reduce((inner, key) => inner[key], root);
  if (value === undefined) delete at[last];
  else at[last] = value;
}

// The riders of a plan change places: what was seen of each goes along.

/** Changes the list of riders; what was seen of one who leaves it leaves too. */
export function changeRiders(plan, change) {
  const before = [...plan.riders];
  change(plan.riders);
  if (!plan.seen) return;
  for (const seen of plan.seen) seen.rider = plan.riders.indexOf(before[seen.rider ?? 0]);
  plan.seen = plan.seen.filter((seen) => seen.rider >= 0);
}

// Who rides: one of the riders in the plan, or of those that come with the page.

import { open as openLink } from "../carryline.js";
import { state, edit } from "../state.js";
import { fields } from "../words.js";

/** The riders to choose from, the one who rides first. */
function candidates() {
  const own = state.plan.riders;
  const usual = openLink("").plan.riders;
  return [...own, ...usual.filter((u) => !own.some((o) => o.label === u.label))];
}

/** The choice of a rider. Whoever is chosen is put first in the plan, and so travels in the link. */
export function rider() {
  const box = document.createElement("fieldset");
  box.className = "riders";
  const legend = document.createElement("legend");
  legend.textContent = fields.label;
  box.append(legend);
  const all = candidates().toSorted((a, b) => a.label.localeCompare(b.label));
  for (const mount of all) {
    const label = document.createElement("label");
    const input = Object.assign(document.createElement("input"), { type: "radio", name: "rider", value: mount.label });
    input.checked = mount.label === state.plan.riders[0].label;
    input.addEventListener("change", () => {
      state.chosen = null;
      edit((plan) => {
        const rest = plan.riders.filter((r) => r.label !== mount.label);
        plan.riders = [mount, ...rest].slice(0, 4);
      }, "structure");
      document.querySelector(`#rider input[value="${CSS.escape(mount.label)}"]`)?.focus();
    });
    const name = document.createElement("span");
    name.textContent = mount.label;
    label.append(input, name);
    box.append(label);
  }
  return box;
}

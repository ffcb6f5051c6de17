import type { Plan } from "#plan/plan.js";
import { placeOf } from "#problems/place.js";
import type { Contact } from "./facts.js";
import { toldIn } from "./told.js";

/** Whom to ring: the clinic while it is open, and the place it names for the other hours. */
export function contactsOf({ clinic, places }: Plan): Contact[] {
  const after = clinic["after hours"];
  const note = after.note === undefined ? null : toldIn(after.note, clinic.language);
  return [
    {
      when: "open",
      name: clinic.name,
      phone: clinic.phone,
      address: clinic.address,
      note: null,
      from: placeOf(places, "clinic", "phone"),
    },
    {
      when: "after-hours",
      name: after.name,
      phone: after.phone,
      address: after.address,
      note,
      from: placeOf(places, "clinic", "after hours", "phone"),
    },
  ];
}

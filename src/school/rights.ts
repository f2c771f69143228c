/** Who may ask a class server for something. */
export const ROLES = ["anyone", "bench", "instructor", "head"] as const;

/**
 * Anyone on the network; a bench that joined, for the person who sits at it; an instructor of the school; its head, who
 * also makes instructors and erases people.
 */
export type Role = (typeof ROLES)[number];

/** Roles that a role has beside its own: whoever leads a school teaches in it too. */
const INCLUDED: Readonly<Record<Role, readonly Role[]>> = {
  anyone: [],
  bench: [],
  instructor: [],
  head: ["instructor"],
};

/** Whether somebody of a role may do what another role is needed for. */
export const mayDo = (role: Role, needed: Role): boolean =>
  needed === "anyone" || role === needed || INCLUDED[role].includes(needed);

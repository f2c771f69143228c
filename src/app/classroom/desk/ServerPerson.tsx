import { type DetailsProps, PersonDetails } from "../../desk/PersonDetails";
import { useAsked } from "../../keeping/useLogbook";
import { Notice } from "../../parts/Notice";
import type { Asking } from "../asking/asking";
import { readRecords } from "./readRecords";

/** One person closely, from the records that the server has of that person. */
export function ServerPerson({ asking, ...props }: DetailsProps & { readonly asking: Asking }) {
  const { personId } = props.chosen;
  const { answer, problem } = useAsked(personId, () => readRecords(asking, `/people/${personId}`));
  if (problem !== null) return <Notice className="">{problem}</Notice>;
  if (answer === null) return <p role="status">Loading the records…</p>;
  return <PersonDetails {...props} contents={answer} />;
}

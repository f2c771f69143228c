import type * as z from "zod/mini";
import type { joined } from "../wire/peopleWire";

/** Somebody who joined a class at a bench, as the bench remembers it. */
interface JoinedHere {
  readonly id: string;
  readonly name: string;
  readonly class: { readonly id: string; readonly name: string };
  /** When the card was lost that the person was told of last, milliseconds since 1970, by the server's clock. */
  readonly cardLostAt?: number | undefined;
}

/** What has changed at the class server since a bench last asked. */
export type BenchNews =
  | { readonly kind: "signed-out" }
  | { readonly kind: "left" | "card-lost"; readonly name: string }
  | { readonly kind: "renamed"; readonly before: string; readonly name: string }
  | { readonly kind: "class-ended"; readonly class: string };

type Answer = z.output<typeof joined>;

/** What a person is told once, and what the bench remembers from then on. */
export interface BenchChange<Joining extends JoinedHere> {
  readonly news: readonly BenchNews[];
  /** Those that are other than before. */
  readonly changed: readonly Joining[];
}

function changeOf<Joining extends JoinedHere>(joining: Joining, { people = [] }: Answer): BenchChange<Joining> {
  const { id, name, cardLostAt = 0 } = joining;
  const person = people.find((one) => one.id === id);
  if (person === undefined) return { news: [{ kind: "left", name }], changed: [] };
  const isRenamed = person.name !== name;
  const lostAt = person.cardLostAt ?? 0;
  const isLost = lostAt > cardLostAt;
  return {
    news: [
      ...(isRenamed ? [{ kind: "renamed", before: name, name: person.name } as const] : []),
      ...(isLost ? [{ kind: "card-lost", name: person.name } as const] : []),
    ],
    changed: isRenamed || isLost ? [{ ...joining, name: person.name, ...(isLost && { cardLostAt: lostAt }) }] : [],
  };
}

/**
 * What a bench hears when it asks who it is.
 *
 * @param answer - null where the server knows nobody at this bench any more
 */
export function benchNews<Joining extends JoinedHere>(
  joinings: readonly Joining[],
  answer: Answer | null,
): BenchChange<Joining> {
  if (answer === null) return { news: joinings.map(({ name }) => ({ kind: "left", name })), changed: [] };
  const each = joinings.map((joining) => changeOf(joining, answer));
  const { classEndedAt = null } = answer;
  return {
    news: [
      ...each.flatMap(({ news }) => news),
      ...(classEndedAt === null ? [] : [{ kind: "class-ended", class: answer.class.name } as const]),
    ],
    changed: each.flatMap(({ changed }) => changed),
  };
}

/** A piece of news in sentences. */
export function newsSentence(news: BenchNews): string {
  switch (news.kind) {
    case "signed-out":
      return "This bench is signed out of the class. Your records stay here. Join the class again to send them.";
    case "left":
      return `${news.name} is not signed in at this bench any more. The records stay here. Join the class again to send them.`;
    case "renamed":
      return `Your instructor changed the name ${news.before} to ${news.name}.`;
    case "card-lost":
      return `The join card of ${news.name} was replaced or canceled. The old card does not work any more. This bench stays joined.`;
    case "class-ended":
      return `The class ${news.class} has ended. You can go on practicing; your records still go to your school.`;
  }
}

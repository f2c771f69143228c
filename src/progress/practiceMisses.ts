import { isRight, type TryResult } from "../drill/marking/tryResult";
import { SHIPPED_QUESTIONS } from "../drill/questions/shippedQuestions";
import { parseSheet } from "../drill/sheet/parseSheet";
import type { QuestionPaper, Sheet, Station } from "../drill/sheet/sheet";
import { stationName } from "../drill/sheet/stationName";
import type { SittingRecord } from "../records/sitting/sittingRecord";

/** A station once more, for the tries that were missed there; none where nothing was. */
function stationAgain(station: Station, index: number, tries: readonly TryResult[]): Station[] {
  const missed = tries.filter((one) => one.station === index && !isRight(one, station));
  if (missed.length === 0) return [];
  const again = { title: stationName(station, index), repetitions: missed.length, passMarks: {} };
  if (station.kind !== "dialing") return [{ ...station, ...again }];
  const list = missed.flatMap((one) => (one.kind === "dialing" ? [one.combination] : []));
  return [{ ...station, ...again, combinations: { policy: "fixed", list } }];
}

/** As many questions of each topic as were answered wrong; undefined of none. */
function paperAgain(answers: SittingRecord["answers"]): QuestionPaper | undefined {
  const counts = new Map<string, number>();
  for (const { questionId, isRight: wasRight } of answers) {
    const topic = SHIPPED_QUESTIONS.find(({ id }) => id === questionId)?.topic;
    if (!wasRight && topic !== undefined) counts.set(topic, (counts.get(topic) ?? 0) + 1);
  }
  const topics = [...counts].map(([topic, count]) => ({ topic, count })) as unknown as QuestionPaper["topics"];
  return topics.length === 0 ? undefined : { topics, passMark: topics.reduce((sum, { count }) => sum + count, 0) };
}

/**
 * A sheet to practice what a sitting missed: its stations with the very combinations that were not opened, and questions
 * on the topics that were answered wrong. Nothing on it is marked but the questions.
 *
 * @returns null where no try was missed, or none can be set up by this version
 */
export function missesSheet({ sheet, tries, answers }: SittingRecord): Sheet | null {
  const stations = sheet.stations.flatMap((station, index) => stationAgain(station, index, tries));
  if (stations.length === 0) return null;
  const questions = paperAgain(answers);
  const rules = { pauseAllowed: true, onReload: "resume", clockHideable: true } as const;
  try {
    return parseSheet({
      format: "gatefall-sheet",
      version: 1,
      title: `Misses of ${sheet.title}`.slice(0, 80),
      purpose: "Do again what you missed, until each one is right.",
      stations,
      order: "blocked",
      ...(questions !== undefined && { sitting: { ...rules, questions } }),
    });
  } catch {
    return null;
  }
}

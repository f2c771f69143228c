import { TOPICS, type Topic } from "../../../drill/questions/question";
import type { QuestionPaper, SittingRules } from "../../../drill/sheet/sheet";
import type { EditSession } from "./editSession";
import { CheckField, ChoiceField, NumberField, TimeField } from "./fields";

const NEW_RULES: SittingRules = { pauseAllowed: false, onReload: "resume", clockHideable: true };

const RELOADS = [
  ["resume", "The sitting continues"],
  ["broken-off", "The sitting ends and is recorded as broken off"],
] as const;

const TOPIC_NAMES: Readonly<Record<Topic, string>> = {
  "turn-counting": "Turn counting",
  "wheel-pack": "Wheel pack",
  zeroing: "Zeroing",
  "choosing-combinations": "Choosing combinations",
  proving: "Proving",
  egress: "Egress",
  records: "Records",
  changing: "Changing a combination",
  trouble: "Finding trouble",
  handover: "Handing over",
  fitting: "Fitting the dial",
  service: "Service",
  instructions: "Instructions and authority",
};

const NO_PAPER: QuestionPaper = { topics: [], passMark: 0 };

/** A paper with another number of questions on a topic; undefined where none is left. */
function withCount(paper: QuestionPaper, topic: Topic, count: number | undefined): QuestionPaper | undefined {
  const isAsked = count !== undefined && count !== 0;
  const others = paper.topics.filter((one) => one.topic !== topic);
  const topics = isAsked ? [...others, { topic, count }] : others;
  const inOrder = topics.toSorted((one, other) => TOPICS.indexOf(one.topic) - TOPICS.indexOf(other.topic));
  return inOrder.length === 0 ? undefined : { ...paper, topics: inOrder };
}

interface RulesProps {
  readonly rules: SittingRules;
  readonly onRules: (rules: Partial<SittingRules>, field: string) => void;
}

function QuestionFields({ rules, onRules }: RulesProps) {
  const paper = rules.questions ?? NO_PAPER;
  return (
    <fieldset className="sheets-part tiles-[210px] phone:tiles-[140px] col-span-full items-start phone:items-end gap-x-5 gap-y-4 mt-4 pt-3 ruled">
      <legend>Questions (empty: none)</legend>
      {TOPICS.map((topic) => {
        const place = paper.topics.findIndex((one) => one.topic === topic);
        return (
          <NumberField
            key={topic}
            label={TOPIC_NAMES[topic]}
            path={`sitting.questions.topics[${place}]`}
            value={paper.topics[place]?.count}
            onNumber={(count) => onRules({ questions: withCount(paper, topic, count) }, topic)}
          />
        );
      })}
      {paper.topics.length > 0 && (
        <NumberField
          label="Right answers needed to pass"
          path="sitting.questions.passMark"
          value={paper.passMark}
          onNumber={(passMark) => onRules({ questions: { ...paper, passMark: passMark ?? Number.NaN } }, "passMark")}
        />
      )}
    </fieldset>
  );
}

function RuleFields({ rules, onRules }: RulesProps) {
  return (
    <>
      <CheckField
        label="Pausing is allowed"
        value={rules.pauseAllowed}
        onCheck={(pauseAllowed) => onRules({ pauseAllowed }, "pauseAllowed")}
      />
      <CheckField
        label="The clock may be hidden"
        value={rules.clockHideable}
        onCheck={(clockHideable) => onRules({ clockHideable }, "clockHideable")}
      />
      <ChoiceField
        label="After a reload or a crash"
        path="sitting.onReload"
        value={rules.onReload}
        choices={RELOADS}
        onChoice={(onReload) => onRules({ onReload }, "onReload")}
      />
      <TimeField
        label="Time limit of the whole sitting, m:ss, h:mm:ss or 90 min (empty: none)"
        path="sitting.timeLimit_s"
        value={rules.timeLimit_s}
        onNumber={(timeLimit_s) => onRules({ timeLimit_s }, "sitting time")}
      />
      <QuestionFields {...{ rules, onRules }} />
    </>
  );
}

/** Whether the sheet is sat as a test, and by which rules. */
export function SittingFields({ session }: { readonly session: EditSession }) {
  const { sitting } = session.sheet;
  return (
    <fieldset className="sheets-part tiles-[210px] phone:tiles-[140px] col-span-full items-start phone:items-end gap-x-5 gap-y-4 mt-4 pt-3 ruled">
      <legend>Sitting</legend>
      <CheckField
        label="This sheet is a test"
        value={sitting !== undefined}
        onCheck={(isSat) => session.describe({ sitting: isSat ? NEW_RULES : undefined }, "sitting")}
      />
      {sitting !== undefined && (
        <RuleFields
          rules={sitting}
          onRules={(rules, field) => session.describe({ sitting: { ...sitting, ...rules } }, field)}
        />
      )}
    </fieldset>
  );
}

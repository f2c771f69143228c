import { sectionsOf } from "../../../service/papers";
import { SECTION_TITLES } from "../../../service/visitNames";
import { Button } from "../../parts/controls/Button";
import { Lines } from "../../parts/Lines";
import type { VisitProps } from "./VisitActs";
import { lastRecordText, sectionText } from "./visitPapersWords";

interface PageProps {
  readonly title: string;
  readonly lines: readonly string[];
  readonly isRead: boolean;
  readonly onRead: () => void;
}

/** A page that is closed until one opens it; opened, it stays so. */
function Page({ title, lines, isRead, onRead }: PageProps) {
  if (!isRead) {
    return (
      <Button className="slim" onClick={onRead}>
        Read: {title}
      </Button>
    );
  }
  return (
    <section className="stack gap-1" aria-label={title}>
      <h3 className="text-small">{title}</h3>
      <Lines className="plain stack gap-1 text-small" of={lines} />
    </section>
  );
}

interface PapersProps extends VisitProps {
  /** Whether every page is open: after the visit. */
  readonly isOpen: boolean;
}

/** The maker's instructions and the last record, section by section. */
export function VisitPapers({ session, isOpen }: PapersProps) {
  const { task, done } = session.visit;
  const isRead = (section: string) =>
    isOpen || done.some(({ act }) => act.type === "section.read" && act.section === section);
  return (
    <section className="panel stack items-start w-full" aria-label="Papers">
      <h2>
        Papers <small>of an invented maker; every lock has its own</small>
      </h2>
      {sectionsOf(task.lock.kind).map((section) => (
        <Page
          key={section}
          title={SECTION_TITLES[section]}
          lines={sectionText(section, task.instructions, task.lock)}
          isRead={isRead(section)}
          onRead={() => session.act({ type: "section.read", section })}
        />
      ))}
      <Page
        title="Last service record"
        lines={lastRecordText(task.lastRecord)}
        isRead={isOpen || done.some(({ act }) => act.type === "record.read")}
        onRead={() => session.act({ type: "record.read" })}
      />
    </section>
  );
}

import { sectionsOf } from "../../../service/papers";
import { SECTION_TITLES } from "../../../service/visitNames";
import { Button } from "../../parts/controls/Button";
import { Lines } from "../../parts/Lines";
import type { VisitProps } from "./VisitActs";
import { lastRecordText, sectionText } from "./visitPapersWords";

interface PapersProps extends VisitProps {
  /** Whether every page is open: after the visit. */
  readonly isOpen: boolean;
}

/** The maker's instructions and the last record: what is closed in a row, and below it, page by page, what was opened. */
export function VisitPapers({ session, isOpen }: PapersProps) {
  const { task, done } = session.visit;
  const pages = [
    ...sectionsOf(task.lock.kind).map((section) => ({
      title: SECTION_TITLES[section],
      lines: sectionText(section, task.instructions, task.lock),
      isRead: done.some(({ act }) => act.type === "section.read" && act.section === section),
      read: () => session.act({ type: "section.read", section }),
    })),
    {
      title: "Last service record",
      lines: lastRecordText(task.lastRecord),
      isRead: done.some(({ act }) => act.type === "record.read"),
      read: () => session.act({ type: "record.read" }),
    },
  ];
  const isShown = ({ isRead }: { readonly isRead: boolean }) => isOpen || isRead;
  return (
    <section className="panel stack w-full" aria-label="Papers">
      <h2>
        Papers <small>of an invented maker; every lock has its own</small>
      </h2>
      <div className="row">
        {pages
          .filter((page) => !isShown(page))
          .map(({ title, read }) => (
            <Button key={title} className="slim" onClick={read}>
              Read: {title}
            </Button>
          ))}
      </div>
      {pages.filter(isShown).map(({ title, lines }) => (
        <section key={title} className="stack gap-1" aria-label={title}>
          <h3 className="text-small">{title}</h3>
          <Lines className="plain stack gap-1 text-small" of={lines} />
        </section>
      ))}
    </section>
  );
}

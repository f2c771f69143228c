import { useState } from "react";
import { classList } from "../../../school/wire/classWire";
import { useAsked } from "../../keeping/useLogbook";
import { Button } from "../../parts/controls/Button";
import { Dialog } from "../../parts/controls/Dialog";
import { LinkRow } from "../../parts/LinkRow";
import { Notice } from "../../parts/Notice";
import { shownName } from "../../parts/shownName";
import { ToldLine, useDoing } from "../../parts/Told";
import { CLASS_VIEWS, classAddress, classViewOf } from "../address/classroomAddress";
import type { Asking } from "../asking/asking";
import type { ClassProps, OfClass } from "../asking/classProps";
import { LineForm } from "../entry/LineForm";
import { CLASS_VIEW_PARTS } from "./classViewParts";

interface ChangeProps extends OfClass {
  readonly onChanged: () => void;
}

/** Renames a class, or ends it. */
function ClassChanges({ asking, one, onChanged }: ChangeProps) {
  const [open, setOpen] = useState<"rename" | "end" | null>(null);
  const { told, act } = useDoing();
  const close = () => setOpen(null);
  const name = shownName(one.name);
  const change = (path: string, value: unknown, says: string) =>
    act(async () => {
      close();
      await asking.act(`/classes/${one.id}/${path}`, value);
      onChanged();
      return says;
    });
  return (
    <div>
      <div className="row">
        <Button aria-haspopup="dialog" onClick={() => setOpen("rename")}>
          Rename
        </Button>
        {one.endedAt === null && (
          <Button aria-haspopup="dialog" onClick={() => setOpen("end")}>
            End the class
          </Button>
        )}
      </div>
      <ToldLine told={told} />
      <Dialog title={`Rename ${name}`} isOpen={open === "rename"} onClose={close}>
        <LineForm
          label="Name of the class"
          button="Save the name"
          value={one.name}
          isPrimary
          onLine={(text) => change("name", { name: text }, `The class is now called ${shownName(text)}.`)}
        />
      </Dialog>
      <Dialog title={`End ${name}?`} isOpen={open === "end"} onClose={close}>
        <p>
          Nobody can join it any more, and its codes and cards stop working. Its people and their records stay. You
          cannot undo this.
        </p>
        <div className="row mt-4">
          <Button className="primary" onClick={() => change("end", undefined, "The class has ended.")}>
            End the class
          </Button>
          <Button onClick={close}>Cancel</Button>
        </div>
      </Dialog>
    </div>
  );
}

/** The tabs of a class, and the view that is open. */
function ClassViews({ asking, one, query }: ClassProps) {
  const view = classViewOf(query.get("view"));
  const { Panel } = CLASS_VIEW_PARTS[view];
  return (
    <>
      {one.endedAt !== null && <p className="notice">This class has ended. Nobody can join it.</p>}
      <LinkRow
        label="Views of the class"
        className="tabs print:hidden"
        links={CLASS_VIEWS.map((key) => ({ key, label: CLASS_VIEW_PARTS[key].label, href: classAddress(one.id, key) }))}
        current={view}
      />
      <Panel asking={asking} one={one} query={query} />
    </>
  );
}

interface PageProps {
  readonly asking: Asking;
  readonly id: string;
  readonly query: URLSearchParams;
}

/** A class, with its tabs: how one joins it, who is in it, what it was set and what came of that. */
export function ClassPage({ asking, id, query }: PageProps) {
  const [version, setVersion] = useState(0);
  const { answer, problem } = useAsked(`class ${id} ${version}`, () => asking.read("/classes", classList));
  const one = answer?.classes.find((each) => each.id === id);
  // One heading throughout: whoever is led to it stays there when the name comes.
  return (
    <>
      <div className="spread items-center gap-4 print:hidden">
        <h1 className="wrap-anywhere" tabIndex={-1}>
          {one === undefined ? "Class" : shownName(one.name)}
        </h1>
        {one !== undefined && (
          <ClassChanges key={one.name} asking={asking} one={one} onChanged={() => setVersion(version + 1)} />
        )}
      </div>
      {one === undefined && problem !== null && <Notice className="">{problem}</Notice>}
      {one === undefined && answer !== null && (
        <Notice className="">There is no class under this address. Choose one from the list.</Notice>
      )}
      {one !== undefined && <ClassViews asking={asking} one={one} query={query} />}
    </>
  );
}

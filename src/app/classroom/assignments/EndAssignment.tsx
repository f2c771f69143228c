import { useState } from "react";
import { Button } from "../../parts/controls/Button";
import { Dialog } from "../../parts/controls/Dialog";
import { shownName } from "../../parts/shownName";
import type { Assignment } from "./assignmentWords";

interface EndProps {
  readonly assignment: Assignment;
  readonly onEnd: () => void;
  readonly onWithdraw: () => void;
}

const ENDS = {
  end: {
    button: "End it early",
    says: "Nobody can begin it any more. A sitting that is under way can be finished. Results stay. You cannot undo this; you can assign the sheet again.",
  },
  withdraw: {
    button: "Withdraw it",
    says: "Nobody has begun it. It goes away as if it had never been assigned. You cannot undo this; you can assign the sheet again.",
  },
} as const;

/** Ends an assignment early, or takes it away while nobody has begun it. */
export function EndAssignment({ assignment, onEnd, onWithdraw }: EndProps) {
  const [open, setOpen] = useState<keyof typeof ENDS | null>(null);
  const close = () => setOpen(null);
  const confirm = () => {
    close();
    if (open === "end") onEnd();
    else onWithdraw();
  };
  const shown = ENDS[open ?? "end"];
  return (
    <div className="row">
      {assignment.endedAt === null && (
        <Button aria-haspopup="dialog" onClick={() => setOpen("end")}>
          {ENDS.end.button}
        </Button>
      )}
      {assignment.begun === 0 && (
        <Button aria-haspopup="dialog" onClick={() => setOpen("withdraw")}>
          {ENDS.withdraw.button}
        </Button>
      )}
      <Dialog title={`${shown.button}: ${shownName(assignment.title)}?`} isOpen={open !== null} onClose={close}>
        <p>{shown.says}</p>
        <div className="row mt-4">
          <Button className="primary" onClick={confirm}>
            {shown.button}
          </Button>
          <Button onClick={close}>Cancel</Button>
        </div>
      </Dialog>
    </div>
  );
}

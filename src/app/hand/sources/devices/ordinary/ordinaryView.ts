import type { OrdinarySeen } from "../../../../../realdial/ordinary/ordinaryDial";
import type { SetupProblem } from "../../../../../realdial/ordinary/reference";
import type { TurnHint } from "../../../../../realdial/ordinary/turnWatch";
import type { ShownDial } from "../../../../../realdial/printed/shownDial";
import { CameraView } from "../camera/cameraView";
import { cameraId } from "../camera/openCamera";
import { keepMarks, MARK_NAMES, type MarkName, type Marks, marksOf, nearestMark, withMark } from "./marks";

/** How far the setup has come. */
export type OrdinaryStep =
  /** Whether this is a practice lock. */
  | "question"
  /** The camera is turned on. */
  | "opening"
  /** The marks are put on the picture. */
  | "marks"
  /** The dial is looked for. */
  | "finding"
  | "turn"
  | "followed";

/** What the person does in the setup. */
interface OrdinaryActs {
  /** It is a practice lock whose combination may be recorded. */
  readonly agree: (keepsMotion: boolean) => void;
  readonly refuse: () => void;
  readonly find: () => void;
  /** Back to the marks. */
  readonly again: () => void;
}

/** What is seen while an ordinary dial is set up and followed. */
export class OrdinaryView extends CameraView {
  step: OrdinaryStep = "question";
  acts: OrdinaryActs | null = null;
  marks: Marks = marksOf(undefined);
  /** The mark that the next tap sets; null once both are set. */
  nextTap: MarkName | null = "middle";
  /** Why the last try failed. */
  problem: SetupProblem | null = null;
  part = 0;
  hint: TurnHint | null = null;
  /** The rim as it was found, while it is learned. */
  rim: ShownDial | null = null;

  /** The device was chosen: first the question. */
  ask(acts: OrdinaryActs): void {
    this.acts = acts;
    this.goTo("question");
  }

  override begin(stream: MediaStream): void {
    this.marks = marksOf(cameraId(stream));
    this.toMarks(null);
    super.begin(stream);
  }

  override end(): void {
    this.acts = null;
    this.step = "question";
    super.end();
  }

  goTo(step: OrdinaryStep): void {
    this.step = step;
    this.changed();
  }

  /** To the marks, from the beginning or after a try that failed. */
  toMarks(problem: SetupProblem | null): void {
    this.problem = problem;
    this.nextTap = "middle";
    this.rim = null;
    this.goTo("marks");
  }

  /** A mark is put somewhere. */
  place(marks: Marks): void {
    this.marks = marks;
    this.changed();
  }

  /** The picture was tapped. @returns the mark that the finger holds now */
  tap(x: number, y: number): MarkName {
    const name = this.nextTap ?? nearestMark(this.marks, x, y, this.size.width / this.size.height);
    if (this.nextTap !== null) this.nextTap = MARK_NAMES[MARK_NAMES.indexOf(name) + 1] ?? null;
    this.place(withMark(this.marks, name, x, y));
    return name;
  }

  /** The dial was found: its marks are remembered for this camera. */
  found(): void {
    if (this.stream !== null) keepMarks(cameraId(this.stream), this.marks);
    this.problem = null;
  }

  /** How the slow turn is getting on. */
  turned({ part, hint, shown }: Turning, size: OrdinaryView["size"]): void {
    this.size = size;
    this.part = part;
    this.hint = hint;
    this.rim = shown;
    this.goTo("turn");
  }
}

type Turning = Extract<OrdinarySeen, { readonly step: "turning" }>;

/** That of this page. */
export const ORDINARY_VIEW = new OrdinaryView();

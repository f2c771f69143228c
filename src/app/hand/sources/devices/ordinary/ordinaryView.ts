import type { OrdinarySeen } from "../../../../../realdial/ordinary/ordinaryDial";
import type { SetupProblem } from "../../../../../realdial/ordinary/reference";
import type { TurnHint } from "../../../../../realdial/ordinary/turnWatch";
import type { ShownDial } from "../../../../../realdial/printed/shownDial";
import { CameraView } from "../camera/cameraView";
import { cameraId } from "../camera/openCamera";
import {
  FIRST_MARKS,
  keepMarks,
  MARK_NAMES,
  type MarkName,
  type Marks,
  movedByKey,
  nearestMark,
  rememberedMarks,
  withMark,
} from "./marks";

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
export interface OrdinaryActs {
  /** It is a practice lock whose combination may be recorded. */
  readonly agree: (keepsMotion: boolean) => void;
  readonly refuse: () => void;
  readonly find: () => void;
  /** Back to the marks. */
  readonly again: () => void;
  /** Another camera was chosen. */
  readonly changeCamera: () => void;
}

/** What is seen while an ordinary dial is set up and followed. */
export class OrdinaryView extends CameraView {
  step: OrdinaryStep = "question";
  acts: OrdinaryActs | null = null;
  marks: Marks = FIRST_MARKS;
  /** Whether the marks lie where they were right the last time, and nobody has moved them. */
  areRemembered = false;
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
    const remembered = rememberedMarks(cameraId(stream));
    this.marks = remembered ?? FIRST_MARKS;
    this.toMarks(null);
    this.areRemembered = remembered !== null;
    if (this.areRemembered) this.nextTap = null;
    super.begin(stream);
  }

  /** The camera is off, and another is turned on. */
  change(): void {
    this.step = "opening";
    super.end();
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

  /** The person goes back to the marks, which lie where they were found right. */
  backToMarks(): void {
    this.toMarks(null);
    this.nextTap = null;
    this.changed();
  }

  /** A mark is put somewhere. */
  place(marks: Marks): void {
    this.marks = marks;
    this.areRemembered = false;
    this.changed();
  }

  /** A mark is moved by a key. @returns whether the key is one that moves it */
  moveByKey(name: MarkName, key: string, isLarge: boolean): boolean {
    const moved = movedByKey(this.marks, name, key, isLarge);
    if (moved === null) return false;
    if (this.nextTap === name) this.tapNext();
    this.place(moved);
    return true;
  }

  /** The picture was tapped. @returns the mark that the finger holds now */
  tap(x: number, y: number): MarkName {
    const name = this.nextTap ?? nearestMark(this.marks, x, y, this.size.width / this.size.height);
    if (this.nextTap !== null) this.tapNext();
    this.place(withMark(this.marks, name, x, y));
    return name;
  }

  private tapNext(): void {
    const set = this.nextTap;
    this.nextTap = set === null ? null : (MARK_NAMES[MARK_NAMES.indexOf(set) + 1] ?? null);
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

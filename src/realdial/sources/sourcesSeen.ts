import type { DialDoubt } from "./dialDoubt";
import { mayKeepMotion, type SourceDescription } from "./sourceDescription";

/** Sources that one record names: a hand that changes more often is not worth more. */
export const MOST_SOURCES = 8;

/** The hands on the screen itself: pointer, keys, wheel and buttons. The finest of them moves a tenth, and a drag less. */
export const SCREEN_SOURCE: SourceDescription = { kind: "screen", resolution: 0.1, noise: null, isCoarse: false };

const isScreen = ({ kind }: SourceDescription) => kind === "screen";

/** Whether two descriptions are of one source: of its kind, as fine, as quiet, and as open. */
export const isSameSource = (one: SourceDescription, other: SourceDescription): boolean =>
  one.kind === other.kind &&
  one.resolution === other.resolution &&
  one.noise === other.noise &&
  one.keepsNoMotion === other.keepsNoMotion;

/** What has turned the dial of one attempt. */
interface Seen {
  /** In the order in which each came. */
  readonly sources: readonly SourceDescription[];
  readonly doubts: readonly DialDoubt[];
}

const NOTHING: Seen = { sources: [], doubts: [] };

function withSource({ sources, doubts }: Seen, source: SourceDescription): Seen {
  // A device is named once: by its noise as it was measured last.
  const known = sources.findIndex((one) => isSameSource({ ...one, noise: source.noise }, source));
  const noise = source.noise ?? sources[known]?.noise ?? null;
  if (known >= 0) return { sources: sources.with(known, { ...source, noise }), doubts };
  if (sources.length < MOST_SOURCES) return { sources: [...sources, source], doubts };
  // A list that is full still says that no motion is kept.
  return { sources: source.keepsNoMotion ? sources.with(-1, source) : sources, doubts };
}

/** Of the hands on the screen alone nothing is lost, whatever becomes of a device that turned nothing. */
const withDoubt = ({ sources, doubts }: Seen, why: DialDoubt): Seen =>
  sources.every(isScreen) || doubts.includes(why) ? { sources, doubts } : { sources, doubts: [...doubts, why] };

/** What has turned a dial since an attempt began, and what makes its turns doubtful. Mutable. */
export class SourcesSeen {
  private seen = NOTHING;
  /** Of the attempt after it, as far as that may have begun. */
  private next = NOTHING;
  private latest: SourceDescription | null = null;

  /** Takes down what turns the dial now. */
  note(source: SourceDescription): void {
    if (source === this.latest) return;
    this.latest = source;
    this.seen = withSource(this.seen, source);
    this.next = withSource(this.next, source);
  }

  /**
   * The turns may be miscounted from here on. Before a device has turned anything there is nothing to miscount.
   *
   * @returns whether the attempt is marked by it
   */
  doubt(why: DialDoubt): boolean {
    this.seen = withDoubt(this.seen, why);
    this.next = withDoubt(this.next, why);
    return this.seen.doubts.includes(why);
  }

  /** Another attempt begins before the hand moves. */
  forget(): void {
    this.seen = NOTHING;
    this.next = NOTHING;
    this.latest = null;
  }

  /** The move that was noted last may begin another attempt: what comes from here on is of both, until that is known. */
  mayGoOn(): void {
    this.next = this.latest === null ? NOTHING : withSource(NOTHING, this.latest);
  }

  /** Another attempt has begun, by the last move that might begin one. */
  goOn(): void {
    this.seen = this.next;
  }

  /** Whether the motion of this attempt may be kept: once a source was in it that keeps none, it may not. */
  get mayKeepMotion(): boolean {
    return mayKeepMotion(this.seen);
  }

  /** For a record, which leaves out what the hands on the screen alone have turned, and doubts where there are none. */
  get forRecord(): { readonly sources?: SourceDescription[]; readonly doubts?: DialDoubt[] } {
    const { sources, doubts } = this.seen;
    return {
      ...(!sources.every(isScreen) && { sources: [...sources] }),
      ...(doubts.length > 0 && { doubts: [...doubts] }),
    };
  }
}

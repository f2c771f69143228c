import type { DialDoubt } from "./dialDoubt";
import type { SourceDescription } from "./sourceDescription";

/** Sources that one record names: a hand that changes more often is not worth more. */
export const MOST_SOURCES = 8;

/** The hands on the screen itself: pointer, keys, wheel and buttons. The finest of them moves a tenth, and a drag less. */
export const SCREEN_SOURCE: SourceDescription = { kind: "screen", resolution: 0.1, noise: null, isCoarse: false };

/** Whether two descriptions are of one source: of its kind, as fine, as quiet, and as open. */
export const isSameSource = (one: SourceDescription, other: SourceDescription): boolean =>
  one.kind === other.kind &&
  one.resolution === other.resolution &&
  one.noise === other.noise &&
  one.keepsNoMotion === other.keepsNoMotion;

/** What has turned a dial since an attempt began, in the order in which each came, and what makes its turns doubtful. Mutable. */
export class SourcesSeen {
  private seen: readonly SourceDescription[] = [];
  private latest: SourceDescription | null = null;
  private hasHidden = false;
  private doubts: readonly DialDoubt[] = [];

  /** Takes down what turns the dial now. */
  note(source: SourceDescription): void {
    if (source === this.latest) return;
    this.latest = source;
    this.hasHidden ||= source.keepsNoMotion === true;
    // A device is named once: by its noise as it was measured last.
    const known = this.seen.findIndex((one) => isSameSource({ ...one, noise: source.noise }, source));
    if (known >= 0)
      this.seen = this.seen.with(known, { ...source, noise: source.noise ?? this.seen[known]?.noise ?? null });
    else if (this.seen.length < MOST_SOURCES) this.seen = [...this.seen, source];
  }

  /**
   * The turns may be miscounted from here on. Before the first of an attempt there is nothing to miscount.
   *
   * @returns whether the attempt is marked by it
   */
  doubt(why: DialDoubt): boolean {
    if (this.seen.length === 0) return false;
    if (!this.doubts.includes(why)) this.doubts = [...this.doubts, why];
    return true;
  }

  /** Another attempt begins before the hand moves. */
  forget(): void {
    this.seen = [];
    this.latest = null;
    this.hasHidden = false;
    this.doubts = [];
  }

  /** Another attempt has begun by the very move that was noted last. */
  goOn(): void {
    this.seen = this.latest === null ? [] : [this.latest];
    this.hasHidden = this.latest?.keepsNoMotion === true;
    this.doubts = [];
  }

  /** Whether the motion of this attempt may be kept: once a source was in it that keeps none, it may not. */
  get mayKeepMotion(): boolean {
    return !this.hasHidden;
  }

  /** For a record of a job, which leaves out what the hands on the screen alone have turned. */
  get forJob(): { readonly sources?: SourceDescription[] } {
    return this.seen.every(({ kind }) => kind === "screen") ? {} : { sources: [...this.seen] };
  }

  /** For a record of an attempt, which leaves out doubts where there are none. */
  get forRecord(): { readonly sources?: SourceDescription[]; readonly doubts?: DialDoubt[] } {
    return { ...this.forJob, ...(this.doubts.length > 0 && { doubts: [...this.doubts] }) };
  }
}

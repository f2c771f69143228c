import type { GrayImage } from "../../../../../realdial/image/grayImage";

/** A picture as the camera took it. */
export interface GrayFrame {
  readonly image: GrayImage;
  /** Capture time by the page's steady clock, ms; where the browser does not tell it, when the picture came. */
  readonly at: number;
}

/** Formats whose first plane is brightness. */
const WITH_BRIGHTNESS = ["I420", "I420A", "I422", "I444", "NV12"];

/** Brightness of a video's frame, without a way over colors; null where the browser or the format does not give it. */
async function brightnessOf(video: HTMLVideoElement): Promise<GrayImage | null> {
  if (typeof VideoFrame === "undefined") return null;
  const frame = new VideoFrame(video);
  try {
    const { format, visibleRect } = frame;
    if (format === null || visibleRect === null || !WITH_BRIGHTNESS.includes(format)) return null;
    const { width, height } = visibleRect;
    const all = new Uint8Array(frame.allocationSize());
    const [plane] = await frame.copyTo(all);
    if (plane === undefined) return null;
    const data = new Uint8Array(width * height);
    for (let row = 0; row < height; row++) {
      const from = plane.offset + row * plane.stride;
      data.set(all.subarray(from, from + width), row * width);
    }
    return { width, height, data };
  } finally {
    frame.close();
  }
}

/** Brightness of colors by the weights of ITU-R BT.601, in 256ths. */
export function grayOf({ width, height, data: colors }: Pick<ImageData, "width" | "height" | "data">): GrayImage {
  const data = new Uint8Array(width * height);
  for (let i = 0; i < data.length; i++) {
    const at = 4 * i;
    data[i] = (77 * (colors[at] ?? 0) + 150 * (colors[at + 1] ?? 0) + 29 * (colors[at + 2] ?? 0)) >> 8;
  }
  return { width, height, data };
}

/** Takes a video's frames in gray. */
export class GrayFrames {
  private readonly video: HTMLVideoElement;
  private readonly take: (frame: GrayFrame) => void;
  private readonly isWanted: () => boolean;
  private canvas: OffscreenCanvas | null = null;
  private asked = 0;
  private isOpen = true;
  /** Whether a frame is on its way: a later one must not come before it, nor both to whoever wants one. */
  private isGrabbing = false;
  private last = 0;

  /** @param isWanted - asked at each frame, before it costs anything */
  constructor(video: HTMLVideoElement, isWanted: () => boolean, take: (frame: GrayFrame) => void) {
    this.video = video;
    this.isWanted = isWanted;
    this.take = take;
    this.ask();
  }

  end(): void {
    this.isOpen = false;
    this.video.cancelVideoFrameCallback(this.asked);
  }

  private ask(): void {
    this.asked = this.video.requestVideoFrameCallback((now, { captureTime }) => {
      this.ask();
      const at = captureTime ?? now;
      if (at <= this.last || this.isGrabbing || !this.isWanted()) return;
      this.last = at;
      void this.grab(at);
    });
  }

  private async grab(at: number): Promise<void> {
    this.isGrabbing = true;
    const brightness = await brightnessOf(this.video).catch(() => null);
    this.isGrabbing = false;
    const image = brightness ?? this.drawn();
    if (this.isOpen && image !== null) this.take({ image, at });
  }

  private drawn(): GrayImage | null {
    const { videoWidth: width, videoHeight: height } = this.video;
    if (width === 0 || height === 0) return null;
    if (this.canvas?.width !== width || this.canvas.height !== height) this.canvas = new OffscreenCanvas(width, height);
    const context = this.canvas.getContext("2d", { willReadFrequently: true });
    if (context === null) return null;
    context.drawImage(this.video, 0, 0);
    return grayOf(context.getImageData(0, 0, width, height));
  }
}

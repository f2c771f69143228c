import { Resvg } from "@resvg/resvg-js";

/** A painted flat thing: how much light each texel sends back, 0 to 1, linear; its middle is the origin of its millimeters. */
export interface Texture {
  /** Texels. */
  readonly width: number;
  readonly height: number;
  readonly texelsPerMm: number;
  /** Row by row from the top. */
  readonly data: Float32Array;
}

/** How much light a gray of a drawing (0 to 255, as screens code it) sends back, by the usual power of 2.2. */
export const reflectanceOf = (gray: number): number => (gray / 255) ** 2.2;

const REFLECTANCE = Float32Array.from({ length: 256 }, (_, gray) => reflectanceOf(gray));

/**
 * A drawing as a texture.
 *
 * @param svg - its text; what it leaves bare is white paper
 * @param widthMm - how wide the whole drawing is, millimeters
 * @param texelsPerMm - some 1.5 times the camera's pixels a millimeter is enough
 */
export function textureOfSvg(svg: string, widthMm: number, texelsPerMm: number): Texture {
  const drawn = new Resvg(svg, {
    fitTo: { mode: "width", value: Math.round(widthMm * texelsPerMm) },
    background: "#fff",
    font: { loadSystemFonts: /<text\b/.test(svg) },
  }).render();
  const { width, height, pixels } = drawn;
  const data = new Float32Array(width * height);
  for (let i = 0; i < data.length; i++) {
    const gray = 0.299 * (pixels[4 * i] ?? 0) + 0.587 * (pixels[4 * i + 1] ?? 0) + 0.114 * (pixels[4 * i + 2] ?? 0);
    data[i] = REFLECTANCE[Math.round(gray)] ?? 0;
  }
  return { width, height, texelsPerMm: width / widthMm, data };
}

/** The part of a texture around a point, as a texture with its own middle: a disc printed on the same sheet as its base. */
export function partOf(
  texture: Texture,
  middle: { readonly x: number; readonly y: number },
  widthMm: number,
  heightMm: number,
): Texture {
  const scale = texture.texelsPerMm;
  const width = Math.round(widthMm * scale);
  const height = Math.round(heightMm * scale);
  const data = new Float32Array(width * height);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const x = middle.x + (column + 0.5 - width / 2) / scale;
      const y = middle.y - (row + 0.5 - height / 2) / scale;
      data[row * width + column] = sampled(texture, x, y);
    }
  }
  return { width, height, texelsPerMm: scale, data };
}

/** A texture of one shade. */
export function evenTexture(widthMm: number, heightMm: number, reflectance: number): Texture {
  const [width, height] = [Math.ceil(widthMm), Math.ceil(heightMm)];
  return { width, height, texelsPerMm: 1, data: new Float32Array(width * height).fill(reflectance) };
}

/** What a texture sends back at a point, millimeters from its middle, x to the right and y up; its rim goes on outside. */
export function sampled(texture: Texture, x: number, y: number): number {
  const { width, height, texelsPerMm, data } = texture;
  const u = clamped(x * texelsPerMm + width / 2 - 0.5, width - 1.001);
  const v = clamped(height / 2 - 0.5 - y * texelsPerMm, height - 1.001);
  const column = u | 0;
  const row = v | 0;
  const i = row * width + column;
  const right = u - column;
  const below = v - row;
  const top = (data[i] as number) * (1 - right) + (data[i + 1] as number) * right;
  const bottom = (data[i + width] as number) * (1 - right) + (data[i + width + 1] as number) * right;
  return top * (1 - below) + bottom * below;
}

const clamped = (value: number, most: number) => (value < 0 ? 0 : Math.min(value, most));

/** The same at half the size, each texel the mean of four. */
function halved(texture: Texture): Texture {
  const width = texture.width >> 1;
  const height = texture.height >> 1;
  const data = new Float32Array(width * height);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const i = 2 * row * texture.width + 2 * column;
      const below = i + texture.width;
      const of = texture.data;
      data[row * width + column] =
        ((of[i] as number) + (of[i + 1] as number) + (of[below] as number) + (of[below + 1] as number)) / 4;
    }
  }
  return { width, height, texelsPerMm: texture.texelsPerMm / 2, data };
}

/** The texture for a camera that shows so many pixels a millimeter: one to two texels a pixel, so that nothing flickers. */
export function textureFor(texture: Texture, pixelsPerMm: number): Texture {
  return texture.texelsPerMm > 2 * pixelsPerMm && Math.min(texture.width, texture.height) > 4
    ? textureFor(halved(texture), pixelsPerMm)
    : texture;
}

/**
 * What a promise comes to, or something else where it takes too long; then the promise goes on by itself.
 *
 * @param wait_ms - how long is waited, milliseconds
 */
export async function inTime<Answer, Otherwise>(
  asked: Promise<Answer>,
  wait_ms: number,
  otherwise: () => Otherwise,
): Promise<Answer | Otherwise> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<Otherwise>((resolve) => {
    timer = setTimeout(() => resolve(otherwise()), wait_ms);
  });
  try {
    return await Promise.race([asked, late]);
  } finally {
    clearTimeout(timer);
  }
}

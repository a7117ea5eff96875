/** A window that is not looked at paints nothing, and is not waited for. */
const NOT_PAINTING_MS = 60;

/** Resolves once the screen has shown what was last drawn: a tap is answered before work begins. */
export function afterPaint(): Promise<void> {
  return new Promise((resolve) => {
    requestAnimationFrame(() => setTimeout(resolve));
    setTimeout(resolve, NOT_PAINTING_MS);
  });
}

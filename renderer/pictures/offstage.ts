import type { ReactNode } from 'react';
import { flushSync } from 'react-dom';
import { createRoot } from 'react-dom/client';

/** Draws a picture that is on no screen, hands it to `use`, and takes it away again. */
export async function offstage(
  picture: ReactNode,
  use: (drawing: SVGSVGElement) => Promise<void>,
): Promise<void> {
  const stage = document.createElement('div');
  stage.className = 'visually-hidden';
  stage.setAttribute('aria-hidden', 'true');
  document.body.append(stage);
  const root = createRoot(stage);
  try {
    flushSync(() => root.render(picture));
    const drawing = stage.querySelector('svg');
    if (!drawing) throw new Error('The picture could not be drawn; load the page anew and try again.');
    await use(drawing);
  } finally {
    root.unmount();
    stage.remove();
  }
}

import type { Page } from 'playwright-core';

/** What has the focus: its name as it is read out, its element, and whether the eye can tell that it has it. */
export interface Focused {
  name: string;
  element: string;
  visible: boolean;
  /** Whether nothing has the focus, so that the next key begins at the top of the page. */
  lost: boolean;
}

/** A focus is seen by an outline or, in pictures, by a line around the spot; never by nothing. */
export async function focusedOn(page: Page): Promise<Focused> {
  return page.evaluate(() => {
    const element = document.activeElement ?? document.body;
    const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(element);
    const outlined =
      outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 1 && !/, 0\)$/.test(outlineColor);
    const ground = element.querySelector('.spot-ground');
    const ringed = ground !== null && Number.parseFloat(getComputedStyle(ground).strokeWidth) >= 2;
    const labels = 'labels' in element ? (element.labels as NodeListOf<Element> | null) : null;
    const name = element.getAttribute('aria-label') ?? labels?.[0]?.textContent ?? element.textContent ?? '';
    const what = `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''}`;
    return { name: name.trim(), element: what, visible: outlined || ringed, lost: element === document.body };
  });
}

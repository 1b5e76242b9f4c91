import type { FileFacts } from '../../contract/proof-checks/facts.ts';

interface Size {
  widthPt: number;
  heightPt: number;
}

/**
 * The size of a page as it is shown, cropped and turned, in points: what boxes on it are measured against. A picture
 * without a stated resolution is measured by its pixels.
 */
export function shownSize(
  facts: FileFacts,
  picture: { page: number; widthPx: number; heightPx: number },
): Size {
  if (facts.of === 'picture') {
    const unit = 72 / (facts.ppi ?? 72);
    return { widthPt: facts.widthPx * unit, heightPt: facts.heightPx * unit };
  }
  const page = facts.of === 'pdf' ? facts.pages[picture.page - 1] : undefined;
  if (!page) return { widthPt: picture.widthPx, heightPt: picture.heightPx };
  const { widthPt, heightPt } = page.crop ?? page.media;
  return page.rotate % 180 === 0 ? { widthPt, heightPt } : { widthPt: heightPt, heightPt: widthPt };
}

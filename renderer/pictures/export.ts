import { saveFile } from '../lib/save-file.ts';

const STYLES = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'font-family',
  'font-size',
  'font-weight',
  'font-style',
  'text-anchor',
  'dominant-baseline',
  'opacity',
] as const;

const SVG = 'http://www.w3.org/2000/svg';

/** The picture as a text that stands alone: what the style sheets give is written into it, links are left out. */
export function svgText(picture: SVGSVGElement): string {
  const copy = picture.cloneNode(true) as SVGSVGElement;
  const originals = picture.querySelectorAll('*');
  copy.querySelectorAll('*').forEach((element, index) => {
    const original = originals[index];
    if (!original) return;
    const style = getComputedStyle(original);
    for (const name of STYLES) element.setAttribute(name, style.getPropertyValue(name));
    for (const name of ['class', 'href', 'tabindex', 'style']) element.removeAttribute(name);
  });
  const { width, height } = picture.viewBox.baseVal;
  copy.removeAttribute('class');
  copy.setAttribute('xmlns', SVG);
  copy.setAttribute('width', String(width));
  copy.setAttribute('height', String(height));
  const ground = document.createElementNS(SVG, 'rect');
  ground.setAttribute('width', String(width));
  ground.setAttribute('height', String(height));
  ground.setAttribute('fill', getComputedStyle(picture).backgroundColor);
  copy.prepend(ground);
  return new XMLSerializer().serializeToString(copy);
}

export function saveSvg(picture: SVGSVGElement, name: string): void {
  saveFile(`${name}.svg`, new Blob([svgText(picture)], { type: 'image/svg+xml' }));
}

/** Pixels of a saved picture to one of the screen. */
const SCALE = 2;

/** Saves the picture as dots, twice as fine as on the screen. */
export async function savePng(picture: SVGSVGElement, name: string): Promise<void> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgText(picture))}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  const { width, height } = picture.viewBox.baseVal;
  canvas.width = Math.round(width * SCALE);
  canvas.height = Math.round(height * SCALE);
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (!blob) throw new Error('The picture is too large to be saved as PNG; save it as SVG.');
  saveFile(`${name}.png`, blob);
}

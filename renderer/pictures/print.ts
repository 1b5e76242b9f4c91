import { svgText } from './export.ts';

/** Runs with the light theme, which is the one for paper; nothing is painted meanwhile. */
function inLight<Result>(make: () => Result): Result {
  const root = document.documentElement;
  const theme = root.dataset.theme;
  root.dataset.theme = 'light';
  try {
    return make();
  } finally {
    if (theme === undefined) delete root.dataset.theme;
    else root.dataset.theme = theme;
  }
}

/** Prints one picture alone on a page of its own, in the colours of paper. */
export async function printPicture(picture: SVGSVGElement, title: string): Promise<void> {
  const text = inLight(() => svgText(picture));
  const image = new Image();
  image.alt = title;
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
  await image.decode();
  const sheet = document.createElement('div');
  sheet.className = 'print-sheet';
  sheet.append(image);
  const done = () => {
    window.removeEventListener('afterprint', done);
    document.documentElement.classList.remove('prints-picture');
    sheet.remove();
  };
  document.body.append(sheet);
  document.documentElement.classList.add('prints-picture');
  window.addEventListener('afterprint', done);
  window.print();
}

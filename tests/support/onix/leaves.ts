import type { Element } from '../../../src/exchange/onix/element.ts';
import { insideXml, parts } from '../../../src/exchange/onix/element.ts';
import { isData } from '../../../src/exchange/onix/tags.ts';
import { MessageParser } from '../../../src/exchange/onix/xml-in.ts';

function walk(element: Element, path: string, found: string[]): void {
  const here = `${path}/${element.name}`;
  if (isData(element.name) || parts(element).length === 0) {
    const attributes = Object.entries(element.attributes)
      .map(([name, value]) => `@${name}=${value}`)
      .join('');
    found.push(`${here}${attributes} ${insideXml(element).replace(/\s+/g, ' ').trim()}`);
    return;
  }
  for (const part of parts(element)) walk(part, here, found);
}

/** Every data element of every product as `path value`, in reference names, sorted. */
export function leavesOf(message: string): string[] {
  const found: string[] = [];
  const parser = new MessageParser({
    root: () => {},
    header: () => {},
    product: (element) => walk(element, '', found),
  });
  parser.write(message);
  parser.close();
  return found.sort();
}

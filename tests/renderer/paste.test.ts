import { describe, expect, it } from 'vitest';
import { readNames } from '../../renderer/lib/paste/names.ts';
import { pasteNames, withPasted } from '../../renderer/screens/work/edition/paste-names.ts';
import { splitKeywords } from '../../renderer/screens/work/edition/split-keywords.ts';

// What people paste out of letters, sheets and title pages; the people are those of the demo press or made up.

const names = (text: string) => {
  const reading = readNames(text);
  if (reading.kind === 'sure')
    return reading.names.map(({ name, aside }) => (aside ? `${name} [${aside}]` : name));
  return { ways: reading.ways.map((way) => way.map(({ name }) => name)) };
};

describe('a pasted list of people', () => {
  it.each<[string, unknown]>([
    ['Maren Oskarsdal', ['Maren Oskarsdal']],
    ['Oskarsdal, Maren', ['Maren Oskarsdal']],
    ['Oskarsdal, Maren; Wrenfield, Tobias', ['Maren Oskarsdal', 'Tobias Wrenfield']],
    ['Oskarsdal, Maren;\n Wrenfield, Tobias ;', ['Maren Oskarsdal', 'Tobias Wrenfield']],
    ['Maren Oskarsdal\r\nTobias Wrenfield', ['Maren Oskarsdal', 'Tobias Wrenfield']],
    ['Maren Oskarsdal and Tobias Wrenfield', ['Maren Oskarsdal', 'Tobias Wrenfield']],
    ['Maren Oskarsdal & Tobias Wrenfield', ['Maren Oskarsdal', 'Tobias Wrenfield']],
    [
      'Maren Oskarsdal, Tobias Wrenfield and Ada Vega Lind',
      ['Maren Oskarsdal', 'Tobias Wrenfield', 'Ada Vega Lind'],
    ],
    [
      'Maren Oskarsdal (editor); Tobias Wrenfield [ill.]',
      ['Maren Oskarsdal [editor]', 'Tobias Wrenfield [ill.]'],
    ],
    ['Wrenfield, Tobias (illustrator)', ['Tobias Wrenfield [illustrator]']],
    ['Vega Lind, Ada', ['Ada Vega Lind']],
    ['Sandmark', ['Sandmark']],
    ['', []],
  ])('%j is read as %j', (text, expected) => {
    expect(names(text)).toEqual(expected);
  });

  it.each<[string, string[][]]>([
    [
      'Maren Oskarsdal, Tobias Wrenfield',
      [['Maren Oskarsdal', 'Tobias Wrenfield'], ['Tobias Wrenfield Maren Oskarsdal']],
    ],
    [
      'Oskarsdal, Maren, Wrenfield, Tobias',
      [
        ['Oskarsdal', 'Maren', 'Wrenfield', 'Tobias'],
        ['Maren Oskarsdal', 'Tobias Wrenfield'],
      ],
    ],
  ])('%j is asked about and not guessed', (text, ways) => {
    expect(names(text)).toEqual({ ways });
  });

  it('fills a row for each, with the role of the row or the one in brackets', () => {
    const rows = [
      { role: 'A01', name: 'Ada Vega Lind' },
      { role: 'B01', name: '' },
    ];
    const found = pasteNames(rows, 1, 'Oskarsdal, Maren; Wrenfield, Tobias (illustrator); Lind, Bo (Oslo)');
    expect(found && withPasted(found, found.ways[0] ?? [])).toEqual([
      { role: 'A01', name: 'Ada Vega Lind' },
      { role: 'B01', name: 'Maren Oskarsdal' },
      { role: 'A12', name: 'Tobias Wrenfield' },
      { role: 'B01', name: 'Bo Lind (Oslo)' },
    ]);
    expect(pasteNames(rows, 1, ' Maren Oskarsdal ')).toBeUndefined();
  });
});

describe('a pasted list of keywords', () => {
  it.each([
    ['salt, sea, coast', ['salt', 'sea', 'coast']],
    ['salt;sea ; coast;', ['salt', 'sea', 'coast']],
    ['salt\tsea\r\ncoast', ['salt', 'sea', 'coast']],
    ['salt | sea • coast · shore', ['salt', 'sea', 'coast', 'shore']],
    ['salt / sea and/or coast', ['salt', 'sea and/or coast']],
    ['- salt\n- sea\n* coast', ['salt', 'sea', 'coast']],
    ['1. salt\n2) sea\n10. coast', ['salt', 'sea', 'coast']],
    ['#salt, #sea', ['salt', 'sea']],
    ['“salt marsh”, "sea"', ['salt marsh', 'sea']],
    ['Salt, salt, SALT', ['Salt']],
    ['19th century, 2 coasts', ['19th century', '2 coasts']],
    ['塩、海，岸', ['塩', '海', '岸']],
    [' ; , ', []],
  ])('%j is %j', (text, expected) => {
    expect(splitKeywords(text)).toEqual(expected);
  });
});

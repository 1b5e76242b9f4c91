import { useQuery } from '@tanstack/react-query';
import { call } from '../../api.ts';
import type { Choice } from '../../ui/index.ts';

/** The most works that one call answers. */
const PAGE = 500;

async function allTitles(): Promise<Choice<string>[]> {
  const choices: Choice<string>[] = [];
  for (;;) {
    const page = await call('works.list', { from: choices.length, count: PAGE });
    choices.push(...page.works.map((work) => ({ value: String(work.id), label: work.title })));
    if (page.works.length === 0 || choices.length >= page.total) return choices;
  }
}

/** Every work as a choice by its id. `chosen` is kept among them even where it is no longer in the catalogue. */
export function useWorkChoices(chosen: number | undefined): Choice<string>[] {
  const titles = useQuery({ queryKey: ['works.list', 'titles'], queryFn: allTitles });
  const choices = titles.data ?? [];
  const value = String(chosen);
  if (chosen === undefined || choices.some((choice) => choice.value === value)) return choices;
  return [{ value, label: `Work ${value}` }, ...choices];
}

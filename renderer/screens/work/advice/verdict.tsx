import type { AdviceVerdict } from '../../../../src/contract/edition-advice.ts';
import { NoticeShape, type NoticeTone } from '../../../ui/standing-shapes.tsx';

const VERDICTS: Record<AdviceVerdict | 'mixed', { word: string; tone: NoticeTone }> = {
  new: { word: 'new number', tone: 'care' },
  judge: { word: 'your call', tone: 'note' },
  same: { word: 'keep the number', tone: 'done' },
  mixed: { word: 'differs by format', tone: 'note' },
};

/** The tone of a notice that bears a verdict. */
export function toneOf(verdict: AdviceVerdict | 'mixed'): NoticeTone {
  return VERDICTS[verdict].tone;
}

/** A verdict as word and shape. */
export function Verdict({ value }: { value: AdviceVerdict | 'mixed' }) {
  const { word, tone } = VERDICTS[value];
  return (
    <span className={`verdict verdict-${value}`}>
      <NoticeShape tone={tone} />
      <span>{word}</span>
    </span>
  );
}

import { useQueryOf } from '../../api.ts';
import { useAsOf, useLedgerLocation } from '../../location.ts';
import { LifePicture } from '../../pictures/life-picture.tsx';
import { Refused, Section } from '../../ui/index.ts';

/** Where every format of the work stood from when to when, as a picture. */
export function WorkLife({ workId }: { workId: number }) {
  const { asOf } = useAsOf();
  const life = useQueryOf('pictures.life', { workId, asOf }, { keep: true });
  const drawn = life.data?.editions.some((edition) => edition.lanes.length > 0);
  if (life.data && !drawn) return null;
  return (
    <Section title="Life of the work">
      <Refused refusal={life.error} />
      {life.data ? <LifePicture life={life.data} href={useLedgerLocation.hrefs} /> : null}
    </Section>
  );
}

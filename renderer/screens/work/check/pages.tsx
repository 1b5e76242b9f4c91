import { useState } from 'react';
import type { CheckDetail, KeptLine } from '../../../../src/contract/proof-checks/checks.ts';
import { PagePicture } from './page-picture.tsx';
import { usePictures } from './use-pictures.ts';

interface PagesProps {
  check: CheckDetail;
  chosen: KeptLine | undefined;
  onChoose: (line: KeptLine | undefined) => void;
}

/** The pages of which pictures are kept: one large, with boxes where its lines were seen, and all of them small. */
export function Pages({ check, chosen, onChoose }: PagesProps) {
  const [turned, turn] = useState<number>();
  const pictures = usePictures(
    check.id,
    check.pictured.map(({ page }) => page),
  );
  const wanted = chosen?.page ?? turned ?? check.lines.find((line) => line.page !== null)?.page;
  const shown = check.pictured.find(({ page }) => page === wanted) ?? check.pictured[0];
  if (!shown) return <p className="soft">No picture of a page is kept with this check.</p>;
  const boxes = (page: number) => check.lines.filter((line) => line.page === page && line.box !== null);
  return (
    <>
      <figure className="page-shown" tabIndex={-1}>
        <PagePicture
          of={shown}
          src={pictures.get(shown.page)}
          alt={`Page ${shown.page} of ${check.fileName}`}
          boxes={boxes(shown.page)}
          chosen={chosen}
        />
        <figcaption>
          Page {shown.page}
          {chosen?.page === shown.page && chosen.box ? `: ${chosen.label} is framed` : ''}
        </figcaption>
      </figure>
      {check.pictured.length < 2 ? null : (
        <ul className="page-strip" aria-label="Pages">
          {check.pictured.map((one) => (
            <li key={one.page}>
              <button
                type="button"
                className="page-small"
                aria-current={one.page === shown.page ? 'page' : undefined}
                onClick={() => {
                  onChoose(undefined);
                  turn(one.page);
                }}
              >
                <PagePicture
                  of={one}
                  src={pictures.get(one.page)}
                  alt=""
                  boxes={boxes(one.page)}
                  chosen={undefined}
                />
                <span>Page {one.page}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

import { type ReactNode, useId } from 'react';

export interface SectionProps {
  title: string;
  actions?: ReactNode;
  children: ReactNode;
}

/** A part of a screen under a heading of the second order. */
export function Section({ title, actions, children }: SectionProps) {
  const id = useId();
  return (
    <section className="section" aria-labelledby={id}>
      <div className="section-head">
        <h2 id={id}>{title}</h2>
        {actions ? <div className="row">{actions}</div> : null}
      </div>
      {children}
    </section>
  );
}

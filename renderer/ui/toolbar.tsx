import type { ReactNode } from 'react';

export interface ToolbarProps {
  label: string;
  children: ReactNode;
  /** Set at the far end: counts, exports. */
  end?: ReactNode;
}

/** The row of filters and buttons above a table; wraps where it must. */
export function Toolbar({ label, children, end }: ToolbarProps) {
  return (
    <fieldset className="toolbar">
      <legend className="visually-hidden">{label}</legend>
      <div className="toolbar-start">{children}</div>
      {end ? <div className="toolbar-end">{end}</div> : null}
    </fieldset>
  );
}

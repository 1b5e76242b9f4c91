import { type ReactNode, useEffect, useRef, useState } from 'react';

/** The frame a wide table scrolls in; a stop of the Tab key only while there is something to scroll. */
export function TableFrame({
  label,
  children,
  foot,
}: {
  label: string;
  children: ReactNode;
  foot?: ReactNode;
}) {
  const frame = useRef<HTMLElement>(null);
  const [wide, setWide] = useState(false);
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const observer = new ResizeObserver(() => setWide(element.scrollWidth > element.clientWidth + 1));
    observer.observe(element);
    if (element.firstElementChild) observer.observe(element.firstElementChild);
    return () => observer.disconnect();
  }, []);
  return (
    <div className="table-block">
      <section
        className="table-frame"
        ref={frame}
        aria-label={`${label}, table`}
        tabIndex={wide ? 0 : undefined}
      >
        {children}
      </section>
      {foot ? <div className="table-foot">{foot}</div> : null}
    </div>
  );
}

import { type ReactNode, useEffect, useRef } from 'react';

/** A slip of paper over the sheet: the browser keeps the focus in it, and Escape lays it down. */
export function Dialog({
  title,
  onClose,
  children,
}: {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}) {
  const element = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const { current } = element;
    current?.showModal();
    return () => current?.close();
  }, []);
  return (
    <dialog
      ref={element}
      className="slip"
      aria-label={title}
      // The event comes late: a dialog that was opened again meanwhile stays.
      onClose={() => element.current?.open || onClose()}
    >
      <h2>{title}</h2>
      {children}
    </dialog>
  );
}

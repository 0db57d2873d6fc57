import { GlobalWorkerOptions, getDocument, type PDFDocumentProxy } from 'pdfjs-dist';
import workerUrl from 'pdfjs-dist/build/pdf.worker.min.mjs?url';
import { useEffect, useRef, useState } from 'react';
import { sheetTexts as say } from '../texts/sheets.js';

GlobalWorkerOptions.workerSrc = workerUrl;

/** Pages of a PDF one below the other, each drawn when it comes into view. */
export default function PdfPages({ title, blob }: { readonly title: string; readonly blob: Blob }) {
  const [document, setDocument] = useState<PDFDocumentProxy | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    let gone = false;
    const opened = blob.arrayBuffer().then((data) => getDocument({ data, isEvalSupported: false }).promise);
    opened.then(
      (each) => gone || setDocument(each),
      (error: Error) => gone || setTrouble(error.message),
    );
    return () => {
      gone = true;
      void opened.then(
        (each) => each.destroy(),
        () => undefined,
      );
    };
  }, [blob]);
  if (trouble) return <p className="waiting">{`${say.previewFailed(title)} ${trouble}`}</p>;
  if (!document) return <p className="waiting">{say.previewing(title)}</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: pages are scrolled by keys
    <section className="pdf-pages" aria-label={title} tabIndex={0}>
      {Array.from({ length: document.numPages }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a page is its number
        <Page key={i} document={document} number={i + 1} />
      ))}
    </section>
  );
}

function Page({ document, number }: { readonly document: PDFDocumentProxy; readonly number: number }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const element = canvas.current;
    if (!element) return;
    let stop: (() => void) | undefined;
    const observer = new IntersectionObserver(
      ([entry]) => {
        if (!entry?.isIntersecting) return;
        observer.disconnect();
        stop = draw(document, number, element);
      },
      { rootMargin: '400px' },
    );
    observer.observe(element);
    return () => {
      observer.disconnect();
      stop?.();
    };
  }, [document, number]);
  return (
    <canvas
      ref={canvas}
      className="page"
      role="img"
      aria-label={say.page(number, document.numPages)}
      data-page={number}
    />
  );
}

/** Draws a page as sharp as the screen is. */
function draw(document: PDFDocumentProxy, number: number, canvas: HTMLCanvasElement): () => void {
  let stopped = false;
  let cancel: (() => void) | undefined;
  void document.getPage(number).then((page) => {
    if (stopped) return;
    const natural = page.getViewport({ scale: 1 });
    const scale = (canvas.clientWidth / natural.width) * window.devicePixelRatio;
    const viewport = page.getViewport({ scale });
    canvas.width = viewport.width;
    canvas.height = viewport.height;
    const task = page.render({ canvas, viewport });
    cancel = () => task.cancel();
    task.promise.then(
      () => canvas.setAttribute('data-drawn', ''),
      // A page that is left while it is drawn is no fault.
      () => undefined,
    );
  });
  return () => {
    stopped = true;
    cancel?.();
  };
}

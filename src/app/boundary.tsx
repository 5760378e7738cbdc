import { Component, type ReactNode } from 'react';
import { appWords } from '../words/app.ts';

interface Props {
  readonly children: ReactNode;
  /** The course as a file, as it was last open. */
  saved(): Blob;
  save(blob: Blob, name: string): void;
}

/** When the drawing of the app itself fails: a sentence and the course as a file, instead of a blank page. */
export class ErrorBoundary extends Component<Props, { readonly failure: string | null }> {
  override state = { failure: null };

  static getDerivedStateFromError(failure: unknown): { readonly failure: string } {
    return { failure: failure instanceof Error ? failure.message : String(failure) };
  }

  override render(): ReactNode {
    if (this.state.failure === null) return this.props.children;
    return (
      <main className="fallen" role="alert">
        <h1>{appWords.broke}</h1>
        <p>{appWords.courseIsSafe}</p>
        <p>
          <button
            type="button"
            className="button primary"
            onClick={() => this.props.save(this.props.saved(), 'rescued.course.json')}
          >
            {appWords.saveAsFile}
          </button>{' '}
          <button type="button" className="button" onClick={() => location.reload()}>
            {appWords.loadPageAgain}
          </button>
        </p>
        <p className="small">{appWords.whatWasSaid(this.state.failure)}</p>
      </main>
    );
  }
}

/** When the page could not begin, for want of a connection or of the browser's store. */
export function NotStarted({ failure }: { readonly failure: unknown }) {
  return (
    <main className="fallen" role="alert">
      <h1>{appWords.notLoaded}</h1>
      <p>{appWords.isThereConnection}</p>
      <p>
        <button type="button" className="button primary" onClick={() => location.reload()}>
          {appWords.loadPageAgain}
        </button>
      </p>
      <p className="small">{appWords.whatWasSaid(failure instanceof Error ? failure.message : String(failure))}</p>
    </main>
  );
}

import { Component, type ReactNode } from 'react';
import { Button, Notice } from '../kit/index.ts';

/** A page that fails says so in its place; the rest of the house stands, and what was typed is kept. */
export class Slip extends Component<{ readonly children: ReactNode }, { readonly error: Error | null }> {
  override state: { readonly error: Error | null } = { error: null };

  static getDerivedStateFromError(error: Error) {
    return { error };
  }

  override render() {
    const { error } = this.state;
    if (error === null) return this.props.children;
    if (/dynamically imported|module script/i.test(error.message)) return <NotFetched />;
    return (
      <div className="page narrow">
        <Notice tone="stop" title="This page could not be shown.">
          <p>Everything recorded is safe on the server, and what you typed is kept on this device.</p>
          <p>
            <b>Load the page again. If it stays, tell the owner these words:</b> {error.message}
          </p>
        </Notice>
        <Button onPress={() => location.reload()}>Load again</Button>
      </div>
    );
  }
}

function NotFetched() {
  return (
    <div className="page narrow">
      <Notice tone="stop" title="This page could not be fetched from the server.">
        <p>Either there is no line to the server, or it was renewed since this tab was opened.</p>
        <p>
          <b>Load again when the line is back. What you typed is kept on this device.</b>
        </p>
      </Notice>
      <Button onPress={() => location.reload()}>Load again</Button>
    </div>
  );
}

import { signInDesk } from '../call/signInDesk.ts';
import type { Line } from '../call/useChanges.ts';
import { Button } from '../kit/index.ts';

/** Says when this screen no longer hears from the server, and what that means for the work. */
export function LineNotice({ line }: { readonly line: Line }) {
  switch (line) {
    case 'up':
      return null;
    case 'down':
      return (
        <div className="away" role="status">
          <b>▲ No line to the server.</b> You can go on typing: it is kept on this device. What others do is
          not shown until the line is back.
        </div>
      );
    case 'signed out':
      return (
        <div className="away" role="status">
          <b>▲ The session has ended.</b> What you typed is kept; it is recorded when somebody signs in.{' '}
          <Button tone="ghost" onPress={() => signInDesk.ask('ended')}>
            Sign in
          </Button>
        </div>
      );
  }
}

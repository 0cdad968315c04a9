import { useSyncExternalStore } from 'react';
import { useMe } from '../call/index.ts';
import { signInDesk } from '../call/signInDesk.ts';
import { Notice, Sheet } from '../kit/index.ts';
import { SignInForm } from './SignInForm.tsx';

/** Comes over any page when the session has ended; the page beneath keeps all that was typed. */
export function SignInSheet() {
  const reason = useSyncExternalStore(signInDesk.subscribe, signInDesk.reason);
  const me = useMe();
  return (
    <Sheet title="Sign in again" isOpen={reason !== null} onClose={() => signInDesk.close(false)}>
      {reason === 'by PIN' ? (
        <Notice tone="caution" title="This needs your passphrase.">
          <p>You came in by PIN, which is enough for the work but not for this.</p>
        </Notice>
      ) : (
        <Notice tone="caution" title="You have been signed out.">
          <p>Nothing you typed is lost. After signing in, it is recorded and you go on where you were.</p>
        </Notice>
      )}
      <SignInForm
        name={me?.name ?? ''}
        onSignedIn={(person) => {
          if (me === null || person === me.person) signInDesk.close(true);
          // What another had begun is neither shown to nor recorded by whoever came now; it waits for them.
          else location.assign('/');
        }}
      />
    </Sheet>
  );
}

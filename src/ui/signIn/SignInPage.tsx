import { SignInForm } from './SignInForm.tsx';

/** The door. */
export function SignInPage({ workshop }: { readonly workshop: string }) {
  return (
    <main className="page narrow">
      <div className="pageTop">
        <div>
          <h1>{workshop}</h1>
          <p className="lead">Sign in to see the rugs in the house.</p>
        </div>
      </div>
      <div className="sect">
        <SignInForm onSignedIn={() => undefined} />
      </div>
      <p className="lead">Forgotten the passphrase? An owner can set a new one for you on the page People.</p>
    </main>
  );
}

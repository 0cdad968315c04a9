import { useState } from 'react';
import { problemOf, useHouse } from '../call/index.ts';
import { Busy, Button, ProblemNotice } from '../kit/index.ts';
import { FirstStartPage } from '../signIn/FirstStartPage.tsx';
import { SignInPage } from '../signIn/SignInPage.tsx';
import { Frame } from './Frame.tsx';

/** Decides who may see what: set-up, the door, or the house itself. */
export function House() {
  const { data, error, refetch, isFetching } = useHouse();
  const [wasIn, setWasIn] = useState(false);
  // Once somebody was in, an expired session never takes the page away: the sign-in sheet comes over it.
  if (data !== undefined && data.signedIn !== null && !wasIn) setWasIn(true);
  if (wasIn) return <Frame />;
  if (data === undefined) {
    return (
      <main className="page narrow">
        {error === null ? (
          <Busy words="Opening the house" />
        ) : (
          <>
            <ProblemNotice problem={problemOf(error)} />
            <Button onPress={() => refetch()} isDisabled={isFetching}>
              Try again
            </Button>
          </>
        )}
      </main>
    );
  }
  return data.setUp ? <SignInPage workshop={data.settings.name} /> : <FirstStartPage />;
}

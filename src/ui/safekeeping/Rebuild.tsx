import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { call, type ShownProblem } from '../call/index.ts';
import { Busy, Button, Notice, ProblemNotice } from '../kit/index.ts';

/** Makes all lists anew from the entries. */
export function Rebuild() {
  const cache = useQueryClient();
  const [isBusy, setBusy] = useState(false);
  const [rows, setRows] = useState<number | null>(null);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const rebuild = async () => {
    setBusy(true);
    setRows(null);
    const answer = await call<{ readonly rows: number }>('/api/safekeeping/rebuild', {
      method: 'POST',
      body: {},
    });
    setBusy(false);
    setProblem(answer.ok ? null : answer.problem);
    if (answer.ok) setRows(answer.value.rows);
    await cache.invalidateQueries();
  };
  return (
    <>
      {isBusy ? (
        <Busy words="Making the lists anew" />
      ) : (
        <Button tone="ghost" onPress={rebuild}>
          Rebuild the lists
        </Button>
      )}
      <ProblemNotice problem={problem} />
      {rows === null ? null : (
        <Notice tone="ok" title={`${rows.toLocaleString('en-GB')} rows were made anew.`} />
      )}
    </>
  );
}

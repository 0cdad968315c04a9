import { useMemo } from 'react';
import { type Flow, tightens } from '../../core/wash/index.ts';
import { agreedPlan, decide, planOf, type RugFactOf, rulebookOf, standingOf } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { stainWords } from '../dossier/figures.ts';
import { useField, useForm } from '../dossier/useForm.ts';
import { Button, Choice, LineField, Notice, ProblemNotice, Sheet } from '../kit/index.ts';

/** What mostly gives the reason, for hands that do not type. */
const reasons: readonly string[] = [
  'Seen on the rug',
  'Smelled it',
  'Shown by the ultraviolet lamp',
  'The client told of it',
  'It came up under work',
];
const [whole, elsewhere] = ['the whole rug', 'elsewhere'];

/** Begins a flow that nothing on record calls for: which, where and why; what it forbids is said before. */
export function BeginFlowSheet({ onClose }: { readonly onClose: () => void }) {
  const { standing, settings } = useDossier();
  const { flows } = rulebookOf(settings);
  const { form, act, isBusy, problem, forget } = useForm('flow/begin', onClose);
  const [id, setId] = useField<string | null>(form, 'flow', null);
  const [place, setPlace] = useField(form, 'place', whole);
  const [where, setWhere] = useField(form, 'where', '');
  const [why, setWhy] = useField(form, 'why', '');
  const flow = flows.find((one) => one.id === id) ?? null;
  const isMark = standing.marks.some(({ mark }) => mark === place);
  const isElsewhere = place === elsewhere;
  const fact: RugFactOf<'FlowBegun'> = {
    ...{ type: 'FlowBegun', flow: id ?? '', why: why.trim() },
    ...(isMark ? { mark: place } : {}),
    ...(isElsewhere && where.trim() !== '' ? { where: where.trim() } : {}),
  };
  const leave = () => {
    forget();
    onClose();
  };
  return (
    <Sheet title="Begin a flow by hand" isOpen onClose={leave}>
      <div className="wash">
        <Choice
          label="What is it?"
          columns={2}
          options={flows.map(({ id: value, title }) => ({ value, words: title }))}
          value={id}
          onChange={setId}
        />
        {flow !== null && (
          <>
            <Before flow={flow} fact={fact} />
            <Choice
              label="Where?"
              columns={2}
              options={[
                { value: whole, words: 'The whole rug, or not known' },
                ...standing.marks.map(({ mark }) => ({
                  value: mark,
                  words: stainWords(standing.marks, mark),
                })),
                { value: elsewhere, words: 'Another place', hint: 'draw it as a mark too' },
              ]}
              value={place}
              onChange={setPlace}
            />
            {isElsewhere && <LineField label="Which place" value={where} onChange={setWhere} />}
            <Choice
              label="Why?"
              columns={2}
              options={reasons.map((value) => ({ value, words: value }))}
              value={reasons.includes(why) ? why : null}
              onChange={setWhy}
            />
            <LineField label="In your own words" value={why} onChange={setWhy} />
          </>
        )}
        <ProblemNotice problem={problem} />
        <Button
          wide
          isDisabled={flow === null || why.trim() === '' || (isElsewhere && where.trim() === '') || isBusy}
          onPress={() => act(fact)}
        >
          Begin{flow === null ? '' : `: ${flow.title}`}
        </Button>
      </div>
    </Sheet>
  );
}

/** Its cautions, and what its suspicion does to the plan, before anything is recorded. */
function Before({ flow, fact }: { readonly flow: Flow; readonly fact: RugFactOf<'FlowBegun'> }) {
  const { entries, standing, settings, asked, now } = useDossier();
  const may = useMemo(() => decide(standing, fact, asked), [standing, fact, asked]);
  const after = useMemo(() => {
    const last = entries.at(-1);
    if (last === undefined) return null;
    const begun = { ...last, id: `${last.id}/flow`, at: now, fact };
    return planOf(standingOf([...entries, begun]), settings, now);
  }, [entries, fact, settings, now]);
  const agreed = agreedPlan(standing);
  const voids =
    agreed !== null && (after?.ok === false || (after?.ok && tightens(agreed, after.value).length > 0));
  return (
    <>
      {!may.ok && <ProblemNotice problem={may.problem} />}
      <Notice tone="caution" title={`Never: ${flow.never.join('; ')}.`}>
        {flow.cautions.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </Notice>
      {voids && (
        <Notice tone="stop" title="The agreed plan will no longer hold.">
          <p>
            {flow.findings?.join(', ') ?? flow.title} counts as suspected from now on. The next wet step waits
            for a tighter plan and a new consent; rinsing and extracting a wet rug are never held back.
          </p>
        </Notice>
      )}
    </>
  );
}

import { useMemo, useState } from 'react';
import { guessLogger, type LoggerMapping, readLogger } from '../../core/drying/index.ts';
import type { RoomFact } from '../../dossier/index.ts';
import { loggerNoteWords } from '../../text/loggerWords.ts';
import type { ShownProblem } from '../call/index.ts';
import { counted } from '../dossier/figures.ts';
import { Button, Choice, instantWords, LineField, Notice, ProblemNotice, Sheet } from '../kit/index.ts';
import { MappingFields } from './MappingFields.tsx';
import { useRoomView } from './roomView.ts';

/** Rows in one entry; a longer file becomes several. */
const rowsEach = 5000;
const mostNotes = 6;
const offsetAt = (utcMs: number): number => -new Date(utcMs).getTimezoneOffset();

/** A logger's file: its columns are mapped once, kept under the logger's name, and proposed the next time. */
export function LoggerSheet({ onClose }: { readonly onClose: () => void }) {
  const { standing, record } = useRoomView();
  const [text, setText] = useState<string | null>(null);
  const [name, setName] = useState('');
  const [where, setWhere] = useState<'room' | 'outside'>('room');
  const [changed, setChanged] = useState<LoggerMapping | null>(null);
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const logger = name.trim();
  const kept = standing.loggers[logger]?.mapping ?? null;
  const guess = useMemo(() => (text === null ? null : guessLogger(text)), [text]);
  const mapping = changed ?? kept ?? guess?.mapping ?? null;
  const read = useMemo(
    () => (text === null || mapping === null ? null : readLogger(text, mapping, offsetAt)),
    [text, mapping],
  );
  const lastKnown = Date.parse(standing.lastFrom[logger] ?? '1970-01-01T00:00:00Z');
  const rows = read?.ok === true ? read.value.rows.filter(({ at }) => at > lastKnown) : [];
  const known = read?.ok === true ? read.value.rows.length - rows.length : 0;

  const take = async () => {
    if (mapping === null) return;
    setBusy(true);
    const facts: RoomFact[] =
      JSON.stringify(kept) === JSON.stringify(mapping)
        ? []
        : [{ type: 'LoggerMapped', logger, where, mapping }];
    for (let from = 0; from < rows.length; from += rowsEach) {
      const part = rows.slice(from, from + rowsEach);
      const told = part.map(({ at, airC, rh }) => ({ at: new Date(at).toISOString(), airC, rh }));
      facts.push({ type: 'AirLogged', where, from: logger, rows: told });
    }
    for (const fact of facts) {
      const answer = await record([fact]);
      if (answer.ok) continue;
      setBusy(false);
      return setProblem(answer.problem);
    }
    onClose();
  };

  return (
    <Sheet title="A logger’s file" isOpen isWide onClose={onClose}>
      <label className="field">
        <span className="name">File</span>
        <input
          type="file"
          className="box"
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          onChange={async ({ target }) => {
            const [file] = target.files ?? [];
            setChanged(null);
            setText(file === undefined ? null : await file.text());
          }}
        />
        <span className="hint">
          comma, semicolon or tab between the values; with time, temperature and humidity
        </span>
      </label>
      <LineField
        label="Logger"
        value={name}
        onChange={setName}
        isRequired
        hint="what is written on it; its columns are kept under this name"
      />
      {Object.keys(standing.loggers).length === 0 ? null : (
        <Choice
          label="Known loggers"
          options={Object.keys(standing.loggers).map((value) => ({ value, words: value }))}
          value={kept === null ? null : logger}
          onChange={(chosen) => {
            setName(chosen);
            setChanged(null);
            setWhere(standing.loggers[chosen]?.where ?? 'room');
          }}
        />
      )}
      <Choice
        label="It stood"
        options={[
          { value: 'room', words: 'In the room' },
          { value: 'outside', words: 'Outside' },
        ]}
        value={where}
        onChange={setWhere}
      />
      {text !== null && mapping === null ? (
        <Notice tone="stop" title="No time, temperature and humidity were found in this file.">
          <p>Export it from the logger as CSV and try again.</p>
        </Notice>
      ) : null}
      {mapping !== null && text !== null ? (
        <MappingFields
          mapping={mapping}
          text={text}
          isSure={kept !== null || guess?.sure === true}
          onChange={setChanged}
        />
      ) : null}
      <div role="status">
        {read?.ok === false ? <ProblemNotice problem={read.problem} /> : null}
        {read?.ok === true ? (
          <Notice
            tone={read.value.leftOut > 0 ? 'caution' : 'ok'}
            title={`${counted(rows.length, 'new reading')} in this file.`}
          >
            <p>
              {rows.length === 0
                ? ''
                : `${instantWords(at(rows[0]?.at))} to ${instantWords(at(rows.at(-1)?.at))}. `}
              {known > 0 ? `${counted(known, 'row')} are on record already. ` : ''}
              {read.value.leftOut > 0 ? `${counted(read.value.leftOut, 'row')} left out.` : ''}
            </p>
            <ul>
              {read.value.notes.slice(0, mostNotes).map((note) => (
                <li key={JSON.stringify(note)}>{loggerNoteWords(note)}</li>
              ))}
            </ul>
            {read.value.notes.length > mostNotes ? (
              <p>And {read.value.notes.length - mostNotes} more.</p>
            ) : null}
          </Notice>
        ) : null}
      </div>
      <ProblemNotice problem={problem} />
      <Button wide isDisabled={logger === '' || rows.length === 0 || isBusy} onPress={take}>
        {isBusy ? 'Recording …' : `Record ${counted(rows.length, 'reading')}`}
      </Button>
    </Sheet>
  );
}

const at = (ms: number | undefined): string => new Date(ms ?? 0).toISOString();

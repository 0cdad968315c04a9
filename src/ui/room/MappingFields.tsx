import { type LoggerMapping, timeForms } from '../../core/drying/index.ts';
import { Notice, Picker } from '../kit/index.ts';

const formWords: { readonly [F in LoggerMapping['timeForm']]: string } = {
  iso: '2026-03-02 07:50',
  'd.m.y': '2.3.2026 (day first)',
  'd/m/y': '2/3/2026 (day first)',
  'm/d/y': '3/2/2026 (month first)',
  'unix s': 'seconds since 1970',
};
const rowsShown = 4;

/** Which column is what; proposed from the file, and asked for where it could be read two ways. */
export function MappingFields(props: {
  readonly mapping: LoggerMapping;
  readonly text: string;
  readonly isSure: boolean;
  readonly onChange: (mapping: LoggerMapping) => void;
}) {
  const { mapping, text, isSure, onChange } = props;
  const lines = text.split(/\r?\n/).slice(Math.max(0, mapping.skipLines - 1), mapping.skipLines + rowsShown);
  const width = Math.max(1, ...lines.map((line) => line.split(mapping.separator).length));
  const columns = Array.from({ length: width }, (_, index) => ({
    value: String(index),
    words: `column ${index + 1}${titleOf(lines[0] ?? '', mapping.separator, index)}`,
  }));
  const column = (name: 'time' | 'temperature' | 'humidity', label: string) => (
    <Picker
      label={label}
      options={columns}
      value={String(mapping.columns[name])}
      onChange={(value) => onChange({ ...mapping, columns: { ...mapping.columns, [name]: Number(value) } })}
    />
  );
  return (
    <details open={!isSure}>
      <summary>What its columns hold{isSure ? '' : ': please look'}</summary>
      {isSure ? null : (
        <Notice tone="caution" title="This could be read in two ways.">
          <p>Look whether the times and figures below are what the logger showed.</p>
        </Notice>
      )}
      <pre className="token">{lines.join('\n')}</pre>
      <div className="form">
        {column('time', 'Time')}
        <Picker
          label="Time is written as"
          options={timeForms.map((value) => ({ value, words: formWords[value] }))}
          value={mapping.timeForm}
          onChange={(timeForm) => onChange({ ...mapping, timeForm: timeForm as LoggerMapping['timeForm'] })}
        />
        {column('temperature', 'Temperature')}
        <Picker
          label="in"
          options={['°C', '°F']}
          value={mapping.temperatureUnit}
          onChange={(unit) => onChange({ ...mapping, temperatureUnit: unit as '°C' | '°F' })}
        />
        {column('humidity', 'Humidity')}
        <Picker
          label="as"
          options={[
            { value: '%', words: 'per cent' },
            { value: 'of 1', words: 'fraction of 1' },
          ]}
          value={mapping.humidityUnit}
          onChange={(unit) => onChange({ ...mapping, humidityUnit: unit as '%' | 'of 1' })}
        />
      </div>
    </details>
  );
}

const titleOf = (head: string, separator: string, index: number): string => {
  const title = head.split(separator)[index]?.trim() ?? '';
  return title === '' ? '' : ` “${title.slice(0, 24)}”`;
};

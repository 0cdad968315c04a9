import { useDossier } from '../dossier/dossierView.ts';
import { Choice } from '../kit/index.ts';

/** Which colour the white cloth was pressed on: its own bench grade is what the cloth is set beside. */
export function ClothOn(props: {
  readonly value: string | null;
  readonly onChange: (colour: string) => void;
}) {
  const { standing } = useDossier();
  return (
    <Choice
      label="Pressed on which colour?"
      columns={2}
      options={standing.colours.map(({ colour, name }) => ({ value: colour, words: name }))}
      value={props.value}
      onChange={props.onChange}
    />
  );
}

import { PhotoTaker, Picture } from '../kit/index.ts';

/** Photographs taken with a reading, each seen as soon as it is safe. */
export function ReadingPhotos(props: {
  readonly photos: readonly string[];
  readonly onChange: (photos: readonly string[]) => void;
}) {
  const { photos, onChange } = props;
  return (
    <>
      <PhotoTaker label="Photograph it" onTaken={({ photo }) => onChange([...photos, photo])} />
      {photos.map((photo, index) => (
        <Picture key={photo} photo={photo} form="thumbnail" alt={`Photograph ${index + 1} of this reading`} />
      ))}
    </>
  );
}

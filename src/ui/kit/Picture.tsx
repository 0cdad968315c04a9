export type PictureForm = 'original' | 'shown' | 'thumbnail';

export const pictureAddress = (photo: string, form: PictureForm): string =>
  `/api/photographs/${photo}/${form}`;

/** A recorded photograph by the hash that names it. */
export function Picture(props: { readonly photo: string; readonly form: PictureForm; readonly alt: string }) {
  return (
    <img
      className={`picture ${props.form}`}
      src={pictureAddress(props.photo, props.form)}
      alt={props.alt}
      loading="lazy"
      decoding="async"
    />
  );
}

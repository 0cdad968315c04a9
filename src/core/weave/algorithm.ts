/**
 * The counter's name and version, recorded with every count. It goes up with whatever can change a figure.
 *
 * @source none: this project's
 */
export const weaveAlgorithm = 'Wefthouse weave counter 2';

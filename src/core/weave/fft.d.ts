declare module 'fft.js' {
  /** Radix-4 transform of a fixed power-of-two size over interleaved complex numbers. */
  export default class FFT {
    constructor(size: number);
    transform(out: Float64Array, data: Float64Array): void;
    inverseTransform(out: Float64Array, data: Float64Array): void;
  }
}

/** Of the colour instruments, kept with every measured figure; raised when the same pictures may give others. */
export const colourVersion = '1';

// Package masking finds the tape and the film that an edge takes.
//
// Standing assumptions:
//   - Edge is the length along which tape is laid once. A stripe has two edges,
//     and so has each border that is taped from both sides; whoever measures the
//     edge says so in its length or in the passes.
//   - Waste is an allowance on the length that is laid, so it multiplies by
//     (1 + waste), unlike the losses of paint. No public figure for it was found;
//     10 to 15 % is common.
//   - A narrow tape is as long as the wide one that is laid behind it.
//   - Film is a band along the edge, once, and any flat area that is covered
//     besides, with an overlap along that area's own edge. The allowance is not
//     on it.
//   - Hours are for the tape that is laid, not for what is thrown away.
package masking

// Package masking finds the tape and the film that an edge takes.
//
// Standing assumptions:
//   - Edge is the length along which tape is laid once. A stripe has two edges,
//     and so has each border that is taped from both sides; whoever measures the
//     edge says so in its length or in the passes.
//   - Waste is an allowance on the length that is laid, so it multiplies by
//     (1 + waste), unlike the losses of paint. No public figure for it was found;
//     10 to 15 % is common.
//   - Film is a band along the edge, once, and any flat area that is covered
//     besides. The allowance is not on it.
package masking

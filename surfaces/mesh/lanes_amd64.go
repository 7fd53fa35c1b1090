package mesh

import "golang.org/x/sys/cpu"

// addWide measures as many fours of records as there are side by side, and
// returns how many bytes these were: none on a processor without the AVX2
// instructions.
func addWide(data []byte, l *lanes) int {
	quads := len(data) / (laneCount * stlRecord)
	if quads == 0 || !cpu.X86.HasAVX2 {
		return 0
	}
	addQuads(&data[0], quads, l)
	return quads * laneCount * stlRecord
}

// addQuads does what add does, for four records at a time.
//
//go:noescape
func addQuads(data *byte, quads int, l *lanes)

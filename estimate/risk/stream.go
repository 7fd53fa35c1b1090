package risk

import (
	"hash/fnv"
	"math/rand/v2"
)

// Block is how many trials are drawn and worked out together. A column of one
// block stays in the nearest cache.
const Block = 512

// stream gives the scores of any source and block without those before them.
type stream struct {
	source rand.PCG
	random *rand.Rand
}

func newStream() *stream {
	s := &stream{}
	s.random = rand.New(&s.source)
	return s
}

// fill draws a block of standard normal scores of one source. They depend on
// the seed, the source's key and the block only; a shorter column is the
// beginning of a longer one.
func (s *stream) fill(seed, key uint64, block int, scores []float64) {
	first := mix(seed ^ mix(key))
	s.source.Seed(first, mix(first+uint64(block)))
	for i := range scores {
		scores[i] = s.random.NormFloat64()
	}
}

// keyOf is the number that tells a source by its name.
func keyOf(name string) uint64 {
	h := fnv.New64a()
	h.Write([]byte(name)) // never fails, as hash.Hash promises
	return h.Sum64()
}

// mix spreads a number's bits over all 64, one to one.
//
// Source: the finalizer of SplitMix64 (Steele, Lea and Flood 2014), from memory.
func mix(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

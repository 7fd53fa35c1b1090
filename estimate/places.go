package estimate

// places is a set of small whole numbers. Its zero value is empty.
type places struct {
	few  uint64   // those below 64
	many []uint64 // the others, 64 to a word
}

const wordBits = 64

func (p places) has(k int) bool {
	if k < wordBits {
		return p.few>>k&1 == 1
	}
	word := k/wordBits - 1
	return word < len(p.many) && p.many[word]>>(k%wordBits)&1 == 1
}

// with adds a number.
func (p places) with(k int) places {
	if k < wordBits {
		p.few |= 1 << k
		return p
	}
	word := k/wordBits - 1
	other := places{many: make([]uint64, word+1)}
	other.many[word] = 1 << (k % wordBits)
	return p.and(other)
}

// and adds all numbers of another set. Neither changes.
func (p places) and(other places) places {
	p.few |= other.few
	if len(other.many) == 0 {
		return p
	}
	many := make([]uint64, max(len(p.many), len(other.many)))
	copy(many, p.many)
	for k, word := range other.many {
		many[k] |= word
	}
	p.many = many
	return p
}

package mesh

// union joins numbers into sets. The root of a set is its smallest number.
type union []uint32

func newUnion(n int) union {
	u := make(union, n)
	for i := range u {
		u[i] = uint32(i)
	}
	return u
}

func (u union) root(i uint32) uint32 {
	for u[i] != i {
		u[i] = u[u[i]]
		i = u[i]
	}
	return i
}

func (u union) join(i, j uint32) {
	i, j = u.root(i), u.root(j)
	u[max(i, j)] = min(i, j)
}

package mesh

// vertexBlock is how many vertices are allocated at a time, so that the memory
// in use follows what has been read and nothing is copied as it grows.
const vertexBlock = 1 << 14

// vertices holds the vertices of a file whose facets refer to them.
type vertices struct {
	blocks [][]Point
	count  int64
}

func (v *vertices) add(p Point, at Place) error {
	if v.count == MaxVertices {
		return fault("too_many", at, "the file has more than %d vertices, which have to be held in memory; export it as binary STL, which has no such limit", MaxVertices).counted(MaxVertices, MaxVertices+1)
	}
	if v.count%vertexBlock == 0 {
		v.blocks = append(v.blocks, make([]Point, 0, vertexBlock))
	}
	last := len(v.blocks) - 1
	v.blocks[last] = append(v.blocks[last], p)
	v.count++
	return nil
}

// at returns a vertex counted from 0, which must be below count.
func (v *vertices) at(i int64) Point { return v.blocks[i/vertexBlock][i%vertexBlock] }

package mesh

import (
	"bytes"
	"errors"
	"io"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestReadingAheadChangesNothing(t *testing.T) {
	data := bytes.Repeat([]byte("0123456789abcdef?"), 70_000) // several times round all pieces
	a := readAhead(bytes.NewReader(data))
	got, err := io.ReadAll(a)
	a.end()
	require.NoError(t, err)
	assert.True(t, bytes.Equal(data, got))
	require.NoError(t, iotest.TestReader(readAhead(bytes.NewReader(data[:1000])), data[:1000]))
}

func TestReadingAheadPassesErrorsOn(t *testing.T) {
	broken := errors.New("the disk is broken")
	a := readAhead(io.MultiReader(bytes.NewReader(make([]byte, 10)), iotest.ErrReader(broken)))
	got, err := io.ReadAll(a)
	a.end()
	assert.ErrorIs(t, err, broken)
	assert.Len(t, got, 10)
}

func TestReadingAheadCanBeLeft(t *testing.T) {
	a := readAhead(newHeights(1_000_000))
	_, err := io.ReadFull(a, make([]byte, 100))
	require.NoError(t, err)
	a.end() // returns, or the test does not end
	_, open := <-a.full
	assert.False(t, open)
}

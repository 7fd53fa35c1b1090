//go:build !amd64

package mesh

// addWide leaves all records to add.
func addWide([]byte, *lanes) int { return 0 }

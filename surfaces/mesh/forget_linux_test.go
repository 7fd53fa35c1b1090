package mesh

import (
	"os"
	"syscall"
)

// forget asks the system to drop a file from its cache (posix_fadvise with
// POSIX_FADV_DONTNEED, which is 4).
func forget(file *os.File) error {
	if _, _, e := syscall.Syscall6(syscall.SYS_FADVISE64, file.Fd(), 0, 0, 4, 0, 0); e != 0 {
		return e
	}
	return nil
}

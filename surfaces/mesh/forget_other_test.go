//go:build !linux

package mesh

import (
	"errors"
	"os"
)

func forget(*os.File) error {
	return errors.New("this system has no call that drops a file from its cache")
}

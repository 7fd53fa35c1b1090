// Command filmbuild estimates what it takes to strip a large static machine to
// bare metal and repaint it.
package main

import (
	"os"

	"filmbuild/api/command"
)

func main() {
	os.Exit(command.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

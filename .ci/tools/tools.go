//go:build tools

// Package tools pins what CI runs beside the Go toolchain.
package tools

import _ "honnef.co/go/tools/cmd/staticcheck"

//go:build !linux

package output

import "errors"

// exchange is Linux's alone; elsewhere two renames do.
func exchange(_, _ string) error { return errors.ErrUnsupported }

// moveToFree too; elsewhere a look and a rename do.
func moveToFree(_, _ string) error { return errors.ErrUnsupported }

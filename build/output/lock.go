package output

import (
	"context"
	"errors"
	"fmt"
	"time"
)

// Another press is waited for as long as one lasts on a slow stick, roughly.
const (
	patience = 20 * time.Second
	glance   = 50 * time.Millisecond
)

// errHeld says that another process has the lock.
const errHeld = constant("another noonbook is writing there")

// lock waits until no other press writes in the folder. The lock ends with the
// process, however that ends.
func lock(ctx context.Context, folder string, wait time.Duration) (release func(), err error) {
	for end := time.Now().Add(wait); ; {
		release, err := tryLock(folder)
		if err == nil {
			return release, nil
		}
		if !errors.Is(err, errHeld) {
			return nil, fmt.Errorf("locking %s: %w", folder, err)
		}
		if time.Now().After(end) {
			return nil, fmt.Errorf("%w, in %s; press again when it is done", errHeld, folder)
		}
		select {
		case <-ctx.Done():
			return nil, fmt.Errorf("pressing was interrupted: %w", ctx.Err())
		case <-time.After(glance):
		}
	}
}

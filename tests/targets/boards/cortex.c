/* A Cortex-M from reset to `main`. Any fault ends with code 99. */

#include "semihosting.h"

uintptr_t board_call(uintptr_t service, const void *argument)
{
    register uintptr_t r0 __asm__("r0") = service;
    register const void *r1 __asm__("r1") = argument;

    __asm__ volatile("bkpt 0xab" : "+r"(r0) : "r"(r1) : "memory");
    return r0;
}

static void fault(void)
{
    board_stop(99);
}

typedef void (*vector)(void);

__attribute__((section(".vectors"), used)) static const struct {
    uint32_t *stack;
    vector reset, others[14];
} vectors = {
    stack_top,
    begin,
    {fault, fault, fault, fault, fault, fault, fault, fault, fault, fault, fault, fault, fault, fault},
};

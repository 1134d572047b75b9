/* A RISC-V hart from reset to `main`. Any trap ends with code 99. */

#include "semihosting.h"

uintptr_t board_call(uintptr_t service, const void *argument)
{
    register uintptr_t a0 __asm__("a0") = service;
    register const void *a1 __asm__("a1") = argument;

    /* The three instructions that mark a call of the host, uncompressed and in one page. */
    __asm__ volatile(".balign 16\n"
                     ".option push\n"
                     ".option norvc\n"
                     "slli zero, zero, 0x1f\n"
                     "ebreak\n"
                     "srai zero, zero, 0x7\n"
                     ".option pop\n"
                     : "+r"(a0)
                     : "r"(a1)
                     : "memory");
    return a0;
}

__attribute__((aligned(4), used)) static void trapped(void)
{
    board_stop(99);
}

__attribute__((used)) static void started(void)
{
    begin();
}

__attribute__((naked, section(".vectors"), used)) void reset(void)
{
    __asm__ volatile(".option arch, +zicsr\n"
                     "la sp, stack_top\n"
                     "la tp, tls_begin\n"
                     "la t0, trapped\n"
                     "csrw mtvec, t0\n"
                     "j started\n");
}

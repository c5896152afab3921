// towershaft-step: which STEP file shows the bodies that towershaft describes?
//
//   towershaft-step < bodies.json > drive.step
//
// Reads docs/schema/solids.schema.json on its standard input and writes ISO 10303-21 by AP 214 on
// its standard output, in millimetres: shafts, radial shafts, gear blanks as they are turned,
// bevel blanks, casings as closed shells, bodies of accessories; each a product of its own name in
// one assembly.  A program of its own: OpenCASCADE (LGPL 2.1 with an exception) is linked here and
// nowhere else.  Exit 0 fine; 2 the input is not understood; 3 the kernel failed.
#include "read_bodies.hpp"
#include "write_step.hpp"

#include <exception>
#include <iostream>

int main()
{
    try {
        const Bodies bodies = read_bodies(std::cin);
        return write_step(bodies, std::cout) ? 0 : 3;
    } catch (const NotUnderstood &why) {
        std::cerr << why.what() << "\n";
        return 2;
    } catch (const std::exception &why) {
        std::cerr << why.what() << "\n";
        return 3;
    }
}

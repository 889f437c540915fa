// What an entry point exports: each name with its declaration as written, its docstring, and the types it names. Follows the
// syntax alone, without working out types: what is public says its types itself.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import ts from 'typescript';

/**
 * @param path of the entry point, from the root
 * @returns `about`, its first docstring; `sections`, its exports parted by the lines `// ---- title`
 */
export function readEntry(root, path) {
    const read = reader(root);
    const source = read(path);
    const sections = [];
    for (const statement of source.statements) {
        const title = sectionTitle(statement);
        if (title !== undefined || sections.length === 0) {
            sections.push({ title, items: [] });
        }
        sections.at(-1).items.push(...exportsOf(read, path, statement));
    }
    const [first] = comments(source.statements[0]);
    return { about: first?.startsWith('/**') ? plainComment(first) : '', sections };
}

/** Reads source files of the repository, each once; nothing for a path that is none. */
function reader(root) {
    const sources = new Map();
    return (path) => {
        if (!sources.has(path)) {
            const file = join(root, path);
            const text = existsSync(file) ? readFileSync(file, 'utf8') : undefined;
            sources.set(path, text && ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true));
        }
        return sources.get(path);
    };
}

function comments(node) {
    const { text } = node.getSourceFile();
    return (ts.getLeadingCommentRanges(text, node.getFullStart()) ?? []).map(({ pos, end }) => text.slice(pos, end));
}

function sectionTitle(statement) {
    return comments(statement).flatMap((comment) => /^\/\/ -{4,} (.+)$/.exec(comment)?.[1] ?? [])[0];
}

function plainComment(comment) {
    const lines = comment.replace(/^\/\*\*|\*\/$/g, '').split('\n');
    return lines
        .map((line) => line.replace(/^\s*\* ?/, ''))
        .join('\n')
        .trim();
}

// ---------------------------------------------------------------- what a statement exports
function exportsOf(read, path, statement) {
    if (!ts.isExportDeclaration(statement)) {
        return isExported(statement) ? namesOf(statement).map((name) => item(read, name, path, [statement])) : [];
    }
    const { exportClause: clause, moduleSpecifier } = statement;
    const from = moduleSpecifier && resolve(read, path, moduleSpecifier.text);
    if (from === undefined) {
        return [];
    }
    if (clause === undefined) {
        return read(from).statements.flatMap((inner) => exportsOf(read, from, inner));
    }
    if (ts.isNamespaceExport(clause)) {
        const text = plainComment(comments(statement).findLast((comment) => comment.startsWith('/**')) ?? '');
        const name = clause.name.text;
        return [{ name, documentation: { text, parameters: [] }, uses: [{ name: `${name}.*`, path: from }] }];
    }
    return clause.elements.map((element) => {
        const declared = declarationsOf(read, from, (element.propertyName ?? element.name).text);
        return item(read, element.name.text, declared.path, declared.nodes);
    });
}

function isExported(statement) {
    const modifiers = ts.canHaveModifiers(statement) ? (ts.getModifiers(statement) ?? []) : [];
    return modifiers.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);
}

function namesOf(statement) {
    if (ts.isVariableStatement(statement)) {
        return statement.declarationList.declarations.map(({ name }) => name.getText());
    }
    return statement.name ? [statement.name.text] : [];
}

/** Where a name is declared, through any re-exports; several nodes for overloads. */
function declarationsOf(read, path, name) {
    const { statements } = read(path);
    const nodes = statements.filter((statement) => isExported(statement) && namesOf(statement).includes(name));
    if (nodes.length > 0) {
        return { path, nodes };
    }
    for (const { exportClause, moduleSpecifier } of statements.filter(ts.isExportDeclaration)) {
        const element = exportClause?.elements?.find((each) => each.name.text === name);
        const from = element && moduleSpecifier && resolve(read, path, moduleSpecifier.text);
        if (from) {
            return declarationsOf(read, from, (element.propertyName ?? element.name).text);
        }
    }
    throw new Error(`${path} does not declare ${name}.`);
}

/** The source file that a relative import leads to; nothing for a package. */
function resolve(read, from, specifier) {
    const path = posix.join(dirname(from), specifier).replace(/\.js$/, '.ts');
    return specifier.startsWith('.') && read(path) ? path : undefined;
}

// ---------------------------------------------------------------- one export
function item(read, name, path, nodes) {
    return {
        name,
        documentation: documentationOf(nodes[0]),
        code: nodes.map(signature).join('\n'),
        uses: nodes.flatMap((node) => typesNamed(read, path, node)).filter((use) => use.name !== name),
    };
}

function documentationOf(node) {
    const comment = node.jsDoc?.at(-1);
    const tags = comment?.tags ?? [];
    const words = (part) => (ts.getTextOfJSDocComment(part?.comment) ?? '').trim();
    const oneLine = (tag) => words(tag).replace(/\s*\n\s*/g, ' ');
    return {
        text: words(comment),
        parameters: tags
            .filter(ts.isJSDocParameterTag)
            .map((tag) => ({ name: tag.name.getText(), words: oneLine(tag) })),
        returns: oneLine(tags.find(ts.isJSDocReturnTag)),
    };
}

/** A declaration without its docstring, its `export`, its body, and what is not for those who use it. */
function signature(node) {
    if (ts.isFunctionDeclaration(node)) {
        return `function ${called(node)};`;
    }
    if (ts.isVariableStatement(node)) {
        const [{ name, type, initializer }] = node.declarationList.declarations;
        return `const ${name.getText()}${type ? `: ${type.getText()}` : ` = ${initializer.getText()}`};`;
    }
    if (ts.isClassDeclaration(node)) {
        const heritage = (node.heritageClauses ?? []).map((clause) => ` ${clause.getText()}`).join('');
        return `class ${node.name.text}${heritage} {\n${node.members.filter(isPublic).map(member).join('\n')}\n}`;
    }
    return node.getText().replace(/^export /, '');
}

function isPublic({ name, modifiers = [] }) {
    const isHidden = modifiers.some(({ kind }) => kind === ts.SyntaxKind.PrivateKeyword);
    return !isHidden && !(name && ts.isPrivateIdentifier(name));
}

function member(node) {
    const documentation = (node.jsDoc ?? []).map((each) => `${each.getText()}\n`).join('');
    if (ts.isPropertyDeclaration(node)) {
        const modifiers = (node.modifiers ?? []).map((each) => `${each.getText()} `).join('');
        return `${documentation}${modifiers}${node.name.getText()}: ${node.type.getText()};`;
    }
    return `${documentation}${called(node)};`;
}

/** `check(file: string, options?: CheckOptions): Checked`; what a function takes apart is named by its type. */
function called({ name, typeParameters = [], parameters, type }) {
    const generics = typeParameters.length > 0 ? `<${typeParameters.map((each) => each.getText()).join(', ')}>` : '';
    const list = parameters.map((parameter) => {
        const words = parameter.type?.getText() ?? typeof JSON.parse(parameter.initializer.getText());
        const label = ts.isIdentifier(parameter.name)
            ? parameter.name.text
            : words[0].toLowerCase() + words.slice(1).replace(/\W.*$/s, '');
        return `${label}${parameter.initializer || parameter.questionToken ? '?' : ''}: ${words}`;
    });
    return `${name?.text ?? 'constructor'}${generics}(${list.join(', ')})${type ? `: ${type.getText()}` : ''}`;
}

// ---------------------------------------------------------------- the types it names
/** Each once, with the file of this repository that declares it. */
function typesNamed(read, path, node) {
    const names = new Set();
    const visit = (each) => {
        if (ts.isTypeReferenceNode(each) || ts.isExpressionWithTypeArguments(each)) {
            names.add((each.typeName ?? each.expression).getText().split('.')[0]);
        }
        if (!ts.isBlock(each) && !(ts.isClassElement(each) && !isPublic(each))) {
            ts.forEachChild(each, visit);
        }
    };
    visit(node);
    return [...names].flatMap((name) => {
        const declared = declaredIn(read, path, name);
        return declared ? [{ name, path: declared }] : [];
    });
}

/** Nothing for the types of TypeScript itself, of packages, and for parameters of a generic. */
function declaredIn(read, path, name) {
    const { statements } = read(path);
    if (statements.some((statement) => !ts.isImportDeclaration(statement) && namesOf(statement).includes(name))) {
        return path;
    }
    const imported = statements
        .filter(ts.isImportDeclaration)
        .find(({ importClause }) => importClause?.namedBindings?.elements?.some((each) => each.name.text === name));
    return imported && resolve(read, path, imported.moduleSpecifier.text);
}

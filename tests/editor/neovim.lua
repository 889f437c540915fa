-- A second editor: Neovim's own client starts `underliner lsp --stdio`, as a person sets it up. What it is told is written
-- as JSON to the file named by OUT.
local plan = vim.env.PLAN
local out = {}

vim.cmd('edit ' .. vim.fn.fnameescape(plan))
local buffer = vim.api.nvim_get_current_buf()
local client = vim.lsp.start_client({
    name = 'underliner',
    cmd = { vim.env.NODE, vim.env.PROGRAM, 'lsp', '--stdio' },
    root_dir = vim.fn.fnamemodify(plan, ':h'),
})
vim.lsp.buf_attach_client(buffer, client)

local function wait(what, satisfied)
    if not vim.wait(20000, satisfied, 20) then
        error('Waited in vain for ' .. what)
    end
end

local function found(code)
    return vim.tbl_filter(function(each)
        return each.user_data.lsp.code == code
    end, vim.diagnostic.get(buffer))
end

local function describe(diagnostics)
    return vim.tbl_map(function(each)
        local line = vim.api.nvim_buf_get_lines(buffer, each.lnum, each.lnum + 1, true)[1]
        return {
            words = line:sub(each.col + 1, each.end_col),
            message = each.message,
            severity = each.severity,
            code = each.user_data.lsp.code,
        }
    end, diagnostics)
end

local ok, failure = pcall(function()
    wait('the server', function()
        return vim.lsp.buf_is_attached(buffer, client) and vim.lsp.get_client_by_id(client).initialized
    end)
    -- A letter too few.
    local lines = vim.api.nvim_buf_get_lines(buffer, 0, -1, true)
    for index, line in ipairs(lines) do
        if line:find('soup%-spoon') then
            local changed = line:gsub('soup%-spoon', 'soup-spon')
            vim.api.nvim_buf_set_lines(buffer, index - 1, index, true, { changed })
            vim.api.nvim_win_set_cursor(0, { index, (changed:find('soup%-spon')) })
        end
    end
    wait('the finding', function()
        return #found('unknown-name') > 0
    end)
    out.found = describe(vim.diagnostic.get(buffer))
    local at = found('unknown-name')[1]
    local params = vim.lsp.util.make_range_params()
    params.context = { diagnostics = { at.user_data.lsp } }
    params.context.diagnostics[1].range = {
        start = { line = at.lnum, character = at.col },
        ['end'] = { line = at.end_lnum, character = at.end_col },
    }
    params.context.diagnostics[1].message = at.message
    local answer = vim.lsp.buf_request_sync(buffer, 'textDocument/codeAction', params, 20000)
    local actions = answer[client].result
    out.fixes = vim.tbl_map(function(action)
        return action.title
    end, actions)
    vim.lsp.util.apply_workspace_edit(actions[1].edit, vim.lsp.get_client_by_id(client).offset_encoding)
    wait('the finding to go', function()
        return #found('unknown-name') == 0
    end)
    vim.lsp.buf.formatting_sync({}, 20000)
    out.left = describe(vim.diagnostic.get(buffer))
    out.text = table.concat(vim.api.nvim_buf_get_lines(buffer, 0, -1, true), '\n') .. '\n'
end)
out.failure = ok and vim.NIL or tostring(failure)
local file = io.open(vim.env.OUT, 'w')
file:write(vim.json.encode(out))
file:close()
vim.lsp.stop_client(client)
vim.cmd('qall!')
